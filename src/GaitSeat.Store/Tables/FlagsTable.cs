using GaitSeat.Model;

namespace GaitSeat.Store;

internal sealed record FlagRow(FlagRecord Flag, string SoftwareVersion);

/// <summary>One row a flag; one file a clip that has any, made anew from the whole run when it or a fault model changed.</summary>
internal static class FlagsTable
{
    internal const string Name = "flags";
    private const string NotInSheet = "Not in the session sheet.";
    private const string NoRule = "The rule finds nothing.";

    internal static Table<FlagRow> Table { get; } = new(
        Name,
        "One row a flag: a fault in a spell that a coach should look at, from the fault models in use with the rules as a floor; where no model is in use, the rule's finding. "
        + "Made at the end of a run and after a training from all spells of the run, so it is as old as that; `findings` holds what the rules found in each clip by itself. A prompt for the coach's eye, not a verdict.",
        [
            Columns.Text<FlagRow>("clip_key", "SHA-256 of the clip's bytes, lower-case hex.", r => r.Flag.Spell.Provenance.ClipKey),
            Columns.Text<FlagRow>("clip_file", "File name of the clip within its folder.", r => r.Flag.Spell.Provenance.ClipFile),
            Columns.Date<FlagRow>("session_date", "Day of the session.", r => r.Flag.Spell.SessionDate, NotInSheet),
            Columns.Text<FlagRow>("rider", "Pseudonym of the rider.", r => r.Flag.Spell.Rider, NotInSheet),
            Columns.Text<FlagRow>("horse", "Pseudonym of the horse.", r => r.Flag.Spell.Horse, NotInSheet),
            Columns.Text<FlagRow>("rein", "`left` or `right`.", r => r.Flag.Spell.Rein, NotInSheet),
            Columns.Whole<FlagRow>("spell", "", "Number of the spell within the clip, from 1.", r => r.Flag.Spell.Spell.Number),
            .. What(),
            .. Provenance(),
        ],
        _ => []);

    private static IEnumerable<Column<FlagRow>> What() =>
    [
        Columns.Text<FlagRow>("fault", "The fault, a term of the trade, as in `findings`.", r => r.Flag.Fault.ToTerm()),
        Columns.Text<FlagRow>("flagged_by", "`model` (the fault model), `rule` (no model is in use for the fault) or `rule_floor` (the model is calm, but the rule is clearly broken).", r => By(r.Flag)),
        Columns.Real<FlagRow>("probability", "0..1", "Probability that the fault is there: of the model where one is in use, else of the rule.", r => r.Flag.Probability, "The rule's standard error is not known."),
        Columns.Real<FlagRow>("rule_probability", "0..1", "Probability of the rule's finding: the rule agrees.", r => r.Flag.Rule?.ProbabilityPastThreshold, NoRule),
        Columns.Text<FlagRow>("rule_summary", "The rule's finding in one line.", r => r.Flag.Rule?.Summary, NoRule),
        Columns.Text<FlagRow>("drivers", "The few measures that speak for it, in plain words, the strongest first, parted by semicolons.", r => string.Join("; ", r.Flag.Drivers)),
        Columns.Real<FlagRow>("start_s", "s", "Where to begin to look, from the start of the video.", r => r.Flag.StartSeconds),
        Columns.Real<FlagRow>("end_s", "s", "Where to stop.", r => r.Flag.EndSeconds),
        Columns.Text<FlagRow>("summary", "One plain line for the coach.", r => r.Flag.Summary),
        Columns.Text<FlagRow>("classifier_hash", "The fault model that was asked.", r => r.Flag.ClassifierHash, "No model is in use for the fault."),
    ];

    private static IEnumerable<Column<FlagRow>> Provenance() =>
    [
        Columns.Text<FlagRow>("pipeline_hash", "SHA-256 over every setting that can change a number.", r => r.Flag.Spell.Provenance.PipelineHash),
        Columns.Text<FlagRow>("model_hash", "SHA-256 over names and hashes of the models in use.", r => r.Flag.Spell.Provenance.ModelHash),
        Columns.Text<FlagRow>("software_version", "Version of the program that wrote the row.", r => r.SoftwareVersion),
        Columns.Whole<FlagRow>("schema_version", "", "Version of the layout of the tables.", _ => Model.Provenance.CurrentSchemaVersion),
    ];

    private static string By(FlagRecord flag) => flag.ClassifierHash is null ? "rule" : flag.IsFloor ? "rule_floor" : "model";
}
