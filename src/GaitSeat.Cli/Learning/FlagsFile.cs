using GaitSeat.Faults.Flags;
using GaitSeat.Model;
using GaitSeat.Store;

namespace GaitSeat.Cli.Learning;

/// <summary>The flags of a run as a Parquet file of their own, for those who want to count them.</summary>
internal static class FlagsFile
{
    private const string ByRule = "The rule alone spoke.";

    internal static LooseTable<Flag> Table { get; } = new(
        "flags",
        "One row a flag: a fault in a spell that a coach should look at, how probable it is and why.",
        [
            LooseColumn.Text<Flag>("clip_key", "SHA-256 of the clip's bytes, lower-case hex.", f => f.Spell.Provenance.ClipKey),
            LooseColumn.Text<Flag>("clip_file", "File name of the clip within its folder.", f => f.Spell.Provenance.ClipFile),
            LooseColumn.Text<Flag>("rider", "Pseudonym of the rider.", f => f.Spell.Rider, "Not in the session sheet."),
            LooseColumn.Whole<Flag>("spell", "", "Number of the spell within the clip, from 1.", f => f.Spell.Spell.Number),
            LooseColumn.Text<Flag>("fault", "The fault, a term of the trade, as in `findings`.", f => f.Score.Fault.ToTerm()),
            LooseColumn.Real<Flag>("probability", "0..1", "Probability that the fault is there: of the model where there is one, else of the rule.", f => f.Score.Probability),
            LooseColumn.Real<Flag>("rule_probability", "0..1", "Probability of the rule's finding.", f => f.Score.Rule?.ProbabilityPastThreshold, "The rule finds nothing."),
            LooseColumn.Text<Flag>("drivers", "The few measures that speak for it, in plain words.", f => string.Join("; ", f.Drivers)),
            LooseColumn.Real<Flag>("start_s", "s", "Where to begin to look, from the start of the video.", f => f.StartSeconds),
            LooseColumn.Real<Flag>("end_s", "s", "Where to stop.", f => f.EndSeconds),
            LooseColumn.Text<Flag>("classifier_hash", "The fault model that spoke.", f => f.Score.ClassifierHash, ByRule),
            LooseColumn.Text<Flag>("pipeline_hash", "SHA-256 over every setting that can change a number.", f => f.Spell.Provenance.PipelineHash),
            LooseColumn.Text<Flag>("model_hash", "SHA-256 over names and hashes of the body-point models.", f => f.Spell.Provenance.ModelHash),
        ]);
}
