using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>Every true stride missed without a word, with what its middle was called instead.</summary>
internal static class MissedTable
{
    public static string Markdown(IReadOnlyList<ClipErrors> clips)
    {
        var table = new MarkdownTable("clip", "from, s", "to, s", "true rise, cm", "true yaw, deg", "called", "nearest measured stride ends or begins, s away");
        foreach (var clip in clips)
            foreach (var missed in clip.Missed.Where(m => m.Why is null)) Row(table, clip, missed);
        return table.ToString();
    }

    private static void Row(MarkdownTable table, ClipErrors clip, MissedStride missed)
    {
        var (from, to) = (missed.Truth.SitS, missed.Truth.NextSitS);
        var motion = clip.Result.Motion;
        var called = motion.Spells.FirstOrDefault(s => (from + to) / 2 >= s.StartSeconds && (from + to) / 2 <= s.EndSeconds);
        var away = motion.Strides.Select(s => Math.Max(s.StartSeconds - to, from - s.EndSeconds)).DefaultIfEmpty(double.NaN).Min();
        table.Row(
            clip.Truth.Clip,
            MarkdownTable.Number(from, "0.00"),
            MarkdownTable.Number(to, "0.00"),
            MarkdownTable.Number(missed.Truth.RiseCm, "0.0"),
            MarkdownTable.Number(missed.Circumstances.YawDeg, "0"),
            called?.Gait.ToTerm() ?? "no spell",
            MarkdownTable.Number(away, "0.00"));
    }
}
