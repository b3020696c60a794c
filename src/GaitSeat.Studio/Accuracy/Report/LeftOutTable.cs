using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>What was left out, by reason: frames, and true strides.</summary>
internal static class LeftOutTable
{
    public static string Frames(IReadOnlyList<ClipErrors> clips)
    {
        var table = new MarkdownTable("frames", "count", "share");
        var total = clips.Sum(c => c.Result.FramesFollowed + NotLookedAt(c));
        table.Row("all", MarkdownTable.Count(total), "100 %");
        table.Row("not looked at: no rider found there, or the clip set aside", MarkdownTable.Count(clips.Sum(NotLookedAt)), MarkdownTable.Share(clips.Sum(NotLookedAt), total));
        foreach (var (reason, count) in Reasons(clips, LeftOutScope.Frame)) table.Row(reason, MarkdownTable.Count(count), MarkdownTable.Share(count, total));
        return table.ToString();
    }

    /// <summary>Every true stride of rising trot with the whole rider in the picture ends in one row.</summary>
    public static string Strides(IReadOnlyList<ClipErrors> clips)
    {
        var table = new MarkdownTable("true strides", "count", "share");
        var missed = clips.SelectMany(c => c.Missed).ToArray();
        var trusted = clips.Sum(c => c.Found.Count(f => f.Pair.Measured.IsTrusted));
        var found = clips.Sum(c => c.Found.Count);
        var total = found + missed.Length;
        void Row(string name, int count) => table.Row(name, MarkdownTable.Count(count), MarkdownTable.Share(count, total));
        Row("measured", trusted);
        Row("measured, said not to be trusted", found - trusted);
        foreach (var group in missed.Where(m => m.Why is not null).GroupBy(m => m.Why!).OrderByDescending(g => g.Count())) Row($"set aside, {group.Key}", group.Count());
        Row("missed without a word", missed.Count(m => m.Why is null));
        return table.ToString();
    }

    /// <summary>What the pipeline itself counts as strides cut but dropped, true ones or not.</summary>
    public static string Dropped(IReadOnlyList<ClipErrors> clips)
    {
        var table = new MarkdownTable("strides cut and dropped", "count");
        foreach (var (reason, count) in Reasons(clips, LeftOutScope.Stride)) table.Row(reason, MarkdownTable.Count(count));
        return table.ToString();
    }

    private static IEnumerable<(string Reason, int Count)> Reasons(IReadOnlyList<ClipErrors> clips, LeftOutScope scope) =>
        clips.SelectMany(c => c.Result.LeftOut).Where(l => l.Scope == scope).GroupBy(l => l.Reason).Select(g => (g.Key, g.Sum(l => l.Count))).OrderByDescending(g => g.Item2);

    /// <summary>Frames of the truth that no followed frame stands near: a clip of a high rate is thinned, so one beside counts.</summary>
    private static int NotLookedAt(ClipErrors clip)
    {
        var seen = clip.Result.Motion.Trace.TimeSeconds;
        var near = 1.01 / clip.Truth.Fps;
        return clip.Truth.FrameRows.Count(r =>
        {
            var at = Array.BinarySearch(seen, r.TimeSeconds);
            if (at >= 0) return false;
            var next = ~at;
            return !(next < seen.Length && seen[next] - r.TimeSeconds <= near) && !(next > 0 && r.TimeSeconds - seen[next - 1] <= near);
        });
    }
}
