namespace GaitSeat.Pipeline.Season;

/// <summary>Which files of a folder are clips: by ending, since the content is judged by FFmpeg and bad ones are set aside with a reason.</summary>
public static class ClipFolder
{
    private static readonly HashSet<string> _videoEndings = new(StringComparer.OrdinalIgnoreCase)
    {
        ".mp4", ".m4v", ".mov", ".mkv", ".webm", ".avi", ".mpg", ".mpeg", ".mts", ".m2ts", ".ts", ".3gp", ".wmv", ".flv", ".ogv", ".mxf", ".dv",
    };

    /// <summary>The clips of a folder, not of its sub-folders, in ordinal order of name.</summary>
    /// <exception cref="SeasonException">There is no such folder, or it holds no clip.</exception>
    public static IReadOnlyList<string> List(string folder)
    {
        if (!Directory.Exists(folder)) throw new SeasonException($"there is no folder '{folder}'");
        string[] files = [.. Directory.EnumerateFiles(folder).Where(IsClip).Order(StringComparer.Ordinal)];
        return files.Length > 0
            ? files
            : throw new SeasonException($"no clips in '{folder}': files ending in {string.Join(' ', _videoEndings.Order())} count as clips; sub-folders are not searched");
    }

    /// <summary>The same with sizes and times, where no clip means that none is there yet. A link that leads nowhere is no clip.</summary>
    /// <exception cref="IOException">The folder is not there or cannot be read just now.</exception>
    public static IReadOnlyList<FileInfo> Present(string folder) =>
        [.. new DirectoryInfo(folder).EnumerateFiles().Where(f => IsClip(f.FullName) && ClipFile.IsThere(f)).OrderBy(f => f.Name, StringComparer.Ordinal)];

    private static bool IsClip(string path) =>
        _videoEndings.Contains(Path.GetExtension(path)) && !Path.GetFileName(path).StartsWith('.');
}
