using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Privacy;

/// <summary>A file of the dataset that is older than its kind may be kept.</summary>
/// <param name="Kind">For people: picture or review copy.</param>
/// <param name="Path">Full path.</param>
public sealed record OldFile(string Kind, string Path);

/// <summary>Pictures and copies for browsers that are older than they may be kept. A picture is as old as the session it shows, a copy as old as the file.</summary>
public static class OldFiles
{
    public static IReadOnlyList<OldFile> Find(Dataset dataset, RetentionSettings settings, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(dataset);
        ArgumentNullException.ThrowIfNull(settings);
        return
        [
            .. settings.PictureDays > 0 ? Pictures(dataset, today.AddDays(-settings.PictureDays)) : [],
            .. settings.ReviewCopyDays > 0 ? Copies(dataset, today.AddDays(-settings.ReviewCopyDays)) : [],
        ];
    }

    /// <summary>Those of clips that are in the dataset with a day; a picture of no clip of ours has no age.</summary>
    private static IEnumerable<OldFile> Pictures(Dataset dataset, DateOnly before)
    {
        var old = dataset.Clips().Where(c => c.SessionDate < before).Select(c => ClipKey.InName(c.ClipKey)).ToHashSet(StringComparer.Ordinal);
        return FilesOf(SeasonRun.PictureFolder(dataset.Folder)).Where(f => f.Name.Length > ClipKey.NameDigits && old.Contains(ClipKey.InName(f.Name))).Select(f => new OldFile("picture", f.FullName));
    }

    private static IEnumerable<OldFile> Copies(Dataset dataset, DateOnly before) =>
        FilesOf(ReviewCopies.FolderOf(dataset.Folder)).Where(f => DateOnly.FromDateTime(f.LastWriteTime) < before).Select(f => new OldFile("review copy", f.FullName));

    private static IEnumerable<FileInfo> FilesOf(string folder) =>
        new DirectoryInfo(folder) is { Exists: true } there ? there.EnumerateFiles().OrderBy(f => f.Name, StringComparer.Ordinal) : [];
}
