namespace GaitSeat.Pipeline.Season;

/// <summary>A clip's file as it lies on the disk. A link counts as what it leads to, or a clip that grows behind it would seem to stand still.</summary>
internal static class ClipFile
{
    /// <exception cref="FileNotFoundException">It is gone, or a link to nothing or in a circle.</exception>
    public static (long Bytes, long ModifiedTicksUtc) StampOf(string path)
    {
        var file = Target(new FileInfo(path)) ?? throw new FileNotFoundException($"'{Path.GetFileName(path)}' is gone, or a link that leads nowhere", path);
        return (file.Length, file.LastWriteTimeUtc.Ticks);
    }

    /// <summary>Whether there is something behind the name.</summary>
    public static bool IsThere(FileInfo file) => Target(file) is not null;

    private static FileInfo? Target(FileInfo file)
    {
        try
        {
            var target = file.LinkTarget is null ? file : file.ResolveLinkTarget(returnFinalTarget: true);
            return target is FileInfo { Exists: true } found ? found : null;
        }
        catch (IOException)
        {
            // A circle of links.
            return null;
        }
    }
}
