namespace GaitSeat.Faults.Tests;

/// <summary>The checkout the tests run in.</summary>
internal static class Repository
{
    internal static string Root { get; } = Find();

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "GaitSeat.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException($"No GaitSeat.sln above {AppContext.BaseDirectory}.");
    }
}
