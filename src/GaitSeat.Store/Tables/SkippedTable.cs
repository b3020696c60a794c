using GaitSeat.Model;

namespace GaitSeat.Store;

internal sealed record SkippedRow(ClipRecord Clip, LeftOut LeftOut) : IClipRow;

/// <summary>One row for each thing left out: nothing is dropped in silence.</summary>
internal static class SkippedTable
{
    internal const string Name = "skipped";

    internal static Table Table { get; } = new Table<SkippedRow>(
        Name,
        "What was left out of a clip, and why: the clip itself, frames, strides.",
        [
            .. SharedColumns.Clip<SkippedRow>(),
            Columns.Text<SkippedRow>("scope", "`clip`, `frame` or `stride`.", r => r.LeftOut.Scope.ToTerm()),
            Columns.Text<SkippedRow>("reason", "A word that can be counted.", r => r.LeftOut.Reason),
            Columns.Whole<SkippedRow>("count", "", "How many; 1 for a clip.", r => r.LeftOut.Count),
            Columns.Text<SkippedRow>("detail", "A sentence: what was found, what is allowed.", r => r.LeftOut.Detail),
            Columns.Real<SkippedRow>("start_s", "s", "Where in the clip, from the start of the video.", r => r.LeftOut.StartSeconds, "Not one place."),
            .. SharedColumns.Provenance<SkippedRow>(),
        ],
        clip => [.. AllLeftOut(clip).Select(l => new SkippedRow(clip, l))]);

    private static IEnumerable<LeftOut> AllLeftOut(ClipRecord clip) =>
        clip.Status == ClipStatus.SetAside && !clip.LeftOut.Any(l => l.Scope == LeftOutScope.Clip)
            ? clip.LeftOut.Prepend(new(LeftOutScope.Clip, clip.Reason!, 1, clip.Detail ?? ""))
            : clip.LeftOut;
}
