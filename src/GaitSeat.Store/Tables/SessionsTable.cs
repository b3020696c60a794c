using GaitSeat.Model;

namespace GaitSeat.Store;

internal sealed record SessionRow(SessionRecord Session, SessionFact Fact);

/// <summary>One row a fact of a session and measure; one file a session and run.</summary>
internal static class SessionsTable
{
    internal const string Name = "sessions";
    private const string NoChange = "Not a change of stirrup length.";

    internal static Table<SessionRow> Table { get; } = new(
        Name,
        "What a session shows as a whole (one rider on one horse on one day): changes of stirrup length, found without being told, and left against right. "
        + "One file a session and run; a session without any such fact has a file without rows.",
        [
            .. Session(),
            .. What(),
            .. DifferenceColumns.Of<SessionRow>("Second less first.", r => r.Fact.Difference, r => r.Fact.WithBias),
            Columns.Real<SessionRow>("side_bias_se", "see `unit`", "How large a difference the models' own habit on the two sides of a rider makes, one standard deviation; it is in the interval, not in `difference_se`.", r => r.Fact.SideBiasStandardError),
            .. Counts(),
            .. Place(),
            .. Provenance(),
        ],
        _ => []);

    internal static IReadOnlyList<SessionRow> RowsOf(SessionRecord session) => [.. session.Facts.Select(f => new SessionRow(session, f))];

    private static IEnumerable<Column<SessionRow>> Session() =>
    [
        Columns.Date<SessionRow>("session_date", "Day of the session.", r => r.Session.Session.Date),
        Columns.Text<SessionRow>("rider", "Pseudonym of the rider.", r => r.Session.Session.Rider),
        Columns.Text<SessionRow>("horse", "Pseudonym of the horse.", r => r.Session.Session.Horse),
    ];

    private static IEnumerable<Column<SessionRow>> What() =>
    [
        Columns.Text<SessionRow>("what", "`stirrup_change` (first before, second after), `rein_difference` (first left rein, second right) or `side_difference` (first the rider's left side as seen, second the right).", r => r.Fact.Kind.ToTerm()),
        Columns.Text<SessionRow>("measure", "Name of the measure.", r => MeasureCatalogue.Get(r.Fact.Measure).Column),
        Columns.Text<SessionRow>("unit", "Unit of the measure.", r => MeasureCatalogue.Get(r.Fact.Measure).Unit),
        Columns.Real<SessionRow>("first", "see `unit`", "Mean over the first group of strides.", r => r.Fact.First.Value),
        Columns.Real<SessionRow>("first_se", "see `unit`", "Standard error of `first`.", r => r.Fact.First.StandardError),
        Columns.Real<SessionRow>("second", "see `unit`", "Mean over the second group.", r => r.Fact.Second.Value),
        Columns.Real<SessionRow>("second_se", "see `unit`", "Standard error of `second`.", r => r.Fact.Second.StandardError),
    ];

    private static IEnumerable<Column<SessionRow>> Counts() =>
    [
        Columns.Whole<SessionRow>("strides_first", "strides", "Trusted strides of the first group.", r => r.Fact.StridesFirst),
        Columns.Whole<SessionRow>("strides_second", "strides", "Trusted strides of the second group.", r => r.Fact.StridesSecond),
        Columns.Whole<SessionRow>("clips_first", "clips", "Clips the first group comes from.", r => r.Fact.ClipsFirst),
        Columns.Whole<SessionRow>("clips_second", "clips", "Clips the second group comes from.", r => r.Fact.ClipsSecond),
    ];

    private static IEnumerable<Column<SessionRow>> Place() =>
    [
        Columns.Text<SessionRow>("direction", "`shorter` or `longer`.", r => r.Fact.Change?.Direction.ToTerm(), NoChange),
        Columns.Text<SessionRow>("rein", "Rein of the strides before and after a change.", r => r.Fact.Change?.Rein, "Not a change of stirrup length, or not in the session sheet."),
        Columns.Text<SessionRow>("facing", "Side of the picture the horse moves towards, before and after a change.", r => r.Fact.Change?.Facing.ToTerm(), NoChange),
        Columns.Text<SessionRow>("clip_before", "Clip of the last stride before the change.", r => r.Fact.Change?.ClipBefore, NoChange),
        Columns.Real<SessionRow>("before_end_s", "s", "End of that stride, from the start of its video.", r => r.Fact.Change?.BeforeEndSeconds, NoChange),
        Columns.Text<SessionRow>("clip_after", "Clip of the first stride after the change.", r => r.Fact.Change?.ClipAfter, NoChange),
        Columns.Real<SessionRow>("after_start_s", "s", "Start of that stride, from the start of its video.", r => r.Fact.Change?.AfterStartSeconds, NoChange),
        Columns.Real<SessionRow>("chance_probability", "0..1", "How often a session without any change would show as much, over all places and sides searched.", r => r.Fact.Change?.ChanceProbability, NoChange),
    ];

    private static IEnumerable<Column<SessionRow>> Provenance() =>
    [
        Columns.Text<SessionRow>("clip_keys", "SHA-256 of each clip the session was made from, joined by commas.", r => string.Join(',', r.Session.ClipKeys)),
        Columns.Text<SessionRow>("pipeline_hash", "SHA-256 over every setting that can change a number.", r => r.Session.PipelineHash),
        Columns.Text<SessionRow>("model_hash", "SHA-256 over names and hashes of the models in use.", r => r.Session.ModelHash),
        Columns.Text<SessionRow>("software_version", "Version of the program that wrote the row.", r => r.Session.SoftwareVersion),
        Columns.Whole<SessionRow>("schema_version", "", "Version of the layout of the tables.", _ => Model.Provenance.CurrentSchemaVersion),
    ];
}
