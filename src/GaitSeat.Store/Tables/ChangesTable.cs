using GaitSeat.Model;

namespace GaitSeat.Store;

internal sealed record ChangeRow(ClipRecord Clip, StirrupShift Change, ChangeEffect Effect) : IClipRow;

/// <summary>One row a measure of a change of stirrup length found within a clip.</summary>
internal static class ChangesTable
{
    internal const string Name = "changes";

    internal static Table Table { get; } = new Table<ChangeRow>(
        Name,
        "Changes of stirrup length found within a clip, without being told: one row for each change and measure, before and after.",
        [
            .. SharedColumns.Clip<ChangeRow>(),
            .. SharedColumns.Session<ChangeRow>(),
            .. Where(),
            .. Effect(),
            .. SharedColumns.Provenance<ChangeRow>(),
        ],
        clip => [.. (clip.Motion?.Changes ?? []).SelectMany(c => c.Effects.Select(e => new ChangeRow(clip, c, e)))]);

    private static IEnumerable<Column<ChangeRow>> Where() =>
    [
        Columns.Text<ChangeRow>("direction", "`shorter` or `longer`.", r => r.Change.Direction.ToTerm()),
        Columns.Text<ChangeRow>("facing", "Side of the picture the horse moves towards: `left` or `right`.", r => r.Change.Facing.ToTerm(), "Not known."),
        Columns.Real<ChangeRow>("before_end_s", "s", "End of the last stride before the change, from the start of the video.", r => r.Change.Before.EndSeconds),
        Columns.Real<ChangeRow>("after_start_s", "s", "Start of the first stride after it.", r => r.Change.After.StartSeconds),
        Columns.Whole<ChangeRow>("strides_before", "strides", "Strides compared, up to the change before.", r => r.Change.StridesBefore),
        Columns.Whole<ChangeRow>("strides_after", "strides", "Strides compared, up to the next change.", r => r.Change.StridesAfter),
        Columns.Real<ChangeRow>("chance_probability", "0..1", "How often a ride without any change would show as much, over all places searched.", r => r.Change.ChanceProbability),
    ];

    private static IEnumerable<Column<ChangeRow>> Effect() =>
    [
        Columns.Text<ChangeRow>("measure", "Name of the measure.", r => MeasureCatalogue.Get(r.Effect.Measure).Column),
        Columns.Text<ChangeRow>("unit", "Unit of the measure.", r => MeasureCatalogue.Get(r.Effect.Measure).Unit),
        Columns.Real<ChangeRow>("before", "see `unit`", "Mean over the strides before.", r => r.Effect.Before.Value),
        Columns.Real<ChangeRow>("before_se", "see `unit`", "Standard error of `before`.", r => r.Effect.Before.StandardError),
        Columns.Real<ChangeRow>("after", "see `unit`", "Mean over the strides after.", r => r.Effect.After.Value),
        Columns.Real<ChangeRow>("after_se", "see `unit`", "Standard error of `after`.", r => r.Effect.After.StandardError),
        .. DifferenceColumns.Of<ChangeRow>("After less before.", r => r.Effect.Difference, r => r.Effect.Difference),
    ];
}
