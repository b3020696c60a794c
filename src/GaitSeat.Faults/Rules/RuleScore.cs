using GaitSeat.Model;

namespace GaitSeat.Faults.Rules;

/// <summary>How probable a fault is by rule, whether or not it is probable enough for a finding: the baseline that models are held against.</summary>
internal static class RuleScore
{
    /// <returns>Probability, 0..1; 0 where the rule has nothing to go by. No fault gives way to another here.</returns>
    internal static double Of(RiddenSpell spell, Fault fault, RuleSettings settings)
    {
        // "Clearly short" only words the finding; as a score it would rank by the wrong limit.
        var all = settings with { MinimumProbability = 0, StirrupShort = settings.StirrupShort with { ClearlyShortDeg = settings.StirrupShort.ShortDeg } };
        var strides = new SpellStrides(spell.Spell, spell.Strides);
        var finding = fault == Fault.IrregularRise
            ? Irregularity.Check(strides, all)
            : new RuleBook(all, strides).Rules().Where(r => r.Fault == fault).Select(r => RuleCheck.Check(r, strides, all)).FirstOrDefault();
        return finding?.ProbabilityPastThreshold ?? 0;
    }
}
