using GaitSeat.Faults.Features;
using GaitSeat.Model;

namespace GaitSeat.Faults.Flags;

/// <summary>How probable a fault is in a spell.</summary>
/// <param name="Probability">Of the model where there is one, else of the rule.</param>
/// <param name="Rule">The finding of the rule; null where it finds nothing.</param>
/// <param name="ClassifierHash">The model that spoke; null where the rule did.</param>
/// <param name="IsFlagged">Whether a coach should look.</param>
public sealed record SpellScore(FeatureRow Row, Fault Fault, double Probability, Finding? Rule, string? ClassifierHash, bool IsFlagged);

/// <summary>A prompt for the coach's eye.</summary>
/// <param name="Drivers">The few measures that speak for it, in plain words; the rule's own line where a rule alone speaks.</param>
/// <param name="StartSeconds">Where to begin to look: at the strides of the rule where it agrees, else at the spell.</param>
public sealed record Flag(SpellScore Score, IReadOnlyList<string> Drivers, double StartSeconds, double EndSeconds)
{
    public RiddenSpell Spell => Score.Row.Spell;

    /// <summary>One line: how sure, why, and whether the rule agrees.</summary>
    public string Summary => FormattableString.Invariant($"{Score.Fault.ToTerm().Replace('_', ' ')} {100 * Score.Probability:0} %: ")
        + string.Join("; ", Drivers) + (Score.ClassifierHash is null ? "" : Score.Rule is null ? " (no rule agrees)" : " (the rule agrees)");
}
