using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Privacy;

/// <summary>The source clips of a folder that belong to a rider or to keys, and the rows that name them.</summary>
internal static class SourceClips
{
    /// <summary>By the sheet's rider, by name and key, and by key alone: only files that might be meant are read.</summary>
    /// <returns>Full path and key of each.</returns>
    public static async Task<IReadOnlyList<(string Path, string Key)>> FindAsync(string folder, string? rider, IReadOnlySet<string> keys, IReadOnlySet<string> files, CancellationToken ct)
    {
        var sheet = Sheet(folder);
        var found = new List<(string, string)>();
        foreach (var clip in ClipFolder.Present(folder))
        {
            var row = sheet.GetValueOrDefault(clip.Name);
            var theirs = rider is not null && row?.Rider == rider;
            if (!theirs && !files.Contains(clip.Name)) continue;
            var key = await KeyedClip.HashAsync(clip.FullName, clip.Length, ct);
            if (theirs || keys.Contains(key)) found.Add((clip.FullName, key));
        }

        return found;
    }

    /// <summary>How many rows of sheet and consent file name the rider or a file.</summary>
    public static int Rows(string folder, string? rider, IReadOnlySet<string> files) => new[] { SessionSheet.FileName, ConsentFile.FileName }.Sum(f => SheetRows.Count(Path.Combine(folder, f), rider, files));

    /// <summary>Takes those rows out; every other byte stays.</summary>
    public static void DropRows(string folder, string? rider, IReadOnlySet<string> files)
    {
        foreach (var name in new[] { SessionSheet.FileName, ConsentFile.FileName }) SheetRows.Drop(Path.Combine(folder, name), rider, files);
    }

    private static IReadOnlyDictionary<string, Model.Session> Sheet(string folder)
    {
        var path = Path.Combine(folder, SessionSheet.FileName);
        if (!File.Exists(path)) return new Dictionary<string, Model.Session>();
        var read = SessionSheet.Read(path, DateOnly.MinValue);
        return read.Errors.Count == 0 ? read.Sessions : throw new SeasonException($"'{path}' cannot be used, so the rider's clips are not known", [.. read.Errors.Select(e => e.ToString())]);
    }
}
