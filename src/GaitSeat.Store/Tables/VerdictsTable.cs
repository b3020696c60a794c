using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>One row a verdict. Files are only ever added; a change of mind is a later row.</summary>
internal static class VerdictsTable
{
    internal const string Name = "verdicts";
    internal const string Flagged = "flagged";
    internal const string NotFlagged = "not_flagged";
    internal const string TimeFormat = "yyyy-MM-dd'T'HH:mm:ss'Z'";

    internal static Table<Verdict> Table { get; } = new(
        Name,
        "One row a verdict: what a person said of one fault in one spell. Rows are only added; of one judge's rows on the same fault the latest counts.",
        [
            Columns.Text<Verdict>("clip_key", "SHA-256 of the clip's bytes, lower-case hex.", v => v.ClipKey),
            Columns.Text<Verdict>("clip_file", "File name of the clip when it was judged.", v => v.ClipFile),
            Columns.Whole<Verdict>("spell", "", "Number of the spell within the clip, from 1.", v => v.SpellNumber),
            Columns.Text<Verdict>("fault", "The fault judged, a term of the trade, as in `findings`.", v => v.Fault.ToTerm()),
            Columns.Text<Verdict>("verdict", "`agrees` (the fault is there), `does_not` (it is not), `cannot_tell`, or `withdrawn`: the judge's latest answer on the fault is taken back, and the one before it holds again.", v => v.Answer.ToTerm()),
            Columns.Text<Verdict>("judge", "Pseudonym of who judged.", v => v.Judge),
            Columns.Text<Verdict>("judged_at", "When, UTC, ISO 8601 to the second; sorts as text.", v => v.JudgedAt.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture)),
            Columns.Text<Verdict>("note", "The judge's note.", v => v.Note, "None was made."),
            Columns.Text<Verdict>("drawn", "How the spell came before the judge: `chosen`, `ranked`, `uncertain` or `random`.", v => v.Drawn.ToTerm()),
            Columns.Text<Verdict>("told", $"What the tool had said: `{Flagged}` or `{NotFlagged}`.", v => v.ToldFlagged is { } told ? told ? Flagged : NotFlagged : null, "Not known."),
            Columns.Real<Verdict>("told_probability", "0..1", "The probability the tool had given.", v => v.ToldProbability, "It gave none."),
            Columns.Text<Verdict>("classifier_hash", "The fault model that had spoken.", v => v.ClassifierHash, "The rules alone had spoken."),
            Columns.Text<Verdict>("pipeline_hash", "SHA-256 over every setting the spell was measured with.", v => v.PipelineHash),
            Columns.Text<Verdict>("model_hash", "SHA-256 over names and hashes of the body-point models.", v => v.ModelHash),
            Columns.Whole<Verdict>("schema_version", "", "Version of the layout of the tables.", _ => Provenance.CurrentSchemaVersion),
        ],
        _ => []);
}
