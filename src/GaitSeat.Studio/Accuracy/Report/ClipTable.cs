using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>One row a clip, for finding the one that went wrong.</summary>
internal static class ClipTable
{
    public static string Markdown(IReadOnlyList<ClipErrors> clips)
    {
        var table = new MarkdownTable(
            "clip", "truth", "called", "fps", "camera", "rider px", "yaw deg", "strides found / missed / set aside / invented",
            "rise: truth, bias cm", "thigh: truth, bias deg", "swing: truth, bias cm", "offset: truth, bias cm", "strides marked for care");
        foreach (var clip in clips) Row(table, clip);
        return table.ToString();
    }

    private static void Row(MarkdownTable table, ClipErrors c)
    {
        var t = c.Truth;
        var yaw = t.FrameRows.Count == 0 ? t.YawNominalDeg : t.FrameRows.Average(r => Math.Abs(r.YawDeg));
        table.Row(
            t.Clip,
            string.Join(", ", t.Spells.Select(s => s.GaitTerm.ToTerm())),
            c.Result.SetAside is { } reason ? $"set aside: {reason}" : string.Join(", ", c.Result.Motion.Spells.Select(s => s.Gait.ToTerm())),
            t.Fps.ToString("0.##", CultureInfo.InvariantCulture),
            t.Conditions.GetValueOrDefault("camera") ?? t.Camera,
            MarkdownTable.Number(t.RiderPxHeightMean, "0"),
            MarkdownTable.Number(yaw, "0"),
            $"{c.Found.Count} / {c.Missed.Count(m => m.Why is null)} / {c.Missed.Count(m => m.Why is not null)} / {c.Invented.Count}",
            Bias(c, StrideMeasure.RiseHeightCm),
            Bias(c, StrideMeasure.ThighAngleSit),
            Bias(c, StrideMeasure.StirrupDriftSwingCm),
            Bias(c, StrideMeasure.StirrupDriftOffsetCm),
            string.Join(", ", c.Found.Select(f => f.Pair.Measured.Quality).Where(q => q != "good").GroupBy(q => q).Select(g => $"{g.Count()} {g.Key}")));
    }

    private static string Bias(ClipErrors clip, StrideMeasure measure)
    {
        var errors = clip.Errors.Where(e => e.Measure == measure).ToArray();
        return errors.Length == 0 ? "" : $"{MarkdownTable.Number(errors.Average(e => e.Truth), "0.0")}, {MarkdownTable.Signed(errors.Average(e => e.Error), "0.00")}";
    }
}
