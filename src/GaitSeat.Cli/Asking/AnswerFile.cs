using GaitSeat.Store;

namespace GaitSeat.Cli.Asking;

/// <summary>Where an answer is written before it goes to its place: a file appears whole or not at all, and standard output gets nothing of an answer that failed.</summary>
internal sealed class AnswerFile : IDisposable
{
    private readonly string? _place;

    private AnswerFile(string path, string? place) => (Path, _place) = (path, place);

    public string Path { get; }

    /// <param name="place">The file asked for; null for standard output.</param>
    /// <exception cref="DatasetException">The folder of the file is not there, or cannot be written to.</exception>
    public static AnswerFile For(string? place)
    {
        if (place is null) return new(System.IO.Path.GetTempFileName(), null);
        var full = System.IO.Path.GetFullPath(place);
        if (Directory.Exists(full)) throw new DatasetException($"'{place}' is a folder. Name a file.");
        if (!Directory.Exists(System.IO.Path.GetDirectoryName(full))) throw new DatasetException($"There is no folder '{System.IO.Path.GetDirectoryName(full)}'. Make it, or name a file elsewhere.");
        return new($"{full}.{Guid.NewGuid():N}.tmp", full);
    }

    /// <summary>The answer is whole: it goes to its place.</summary>
    /// <exception cref="DatasetException">It cannot be put there.</exception>
    public void Publish(TextWriter output)
    {
        if (_place is null)
        {
            using var text = File.OpenText(Path);
            var block = new char[1 << 16];
            for (int n; (n = text.ReadBlock(block, 0, block.Length)) > 0;) output.Write(block, 0, n);
            return;
        }

        try
        {
            File.Move(Path, _place, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"'{_place}' could not be written ({e.Message}).", e);
        }
    }

    public void Dispose() => File.Delete(Path);
}
