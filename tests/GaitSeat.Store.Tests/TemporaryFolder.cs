namespace GaitSeat.Store.Tests;

/// <summary>A folder that goes when the test ends.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    internal string Path { get; } = Directory.CreateTempSubdirectory("gaitseat-store-").FullName;

    internal string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
