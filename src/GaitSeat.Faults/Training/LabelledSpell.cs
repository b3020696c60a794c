using GaitSeat.Faults.Features;
using GaitSeat.Faults.Verdicts;

namespace GaitSeat.Faults.Training;

/// <summary>A spell to learn from.</summary>
/// <param name="Rider">The group it belongs to; never null, see <see cref="TrainingSet"/>.</param>
/// <param name="Rule">Probability by rule that the fault is there, the baseline.</param>
public sealed record LabelledSpell(FeatureRow Row, string Rider, bool IsThere, double Rule);

/// <summary>The spells a fault's model learns from, in the order of their keys.</summary>
/// <param name="WithoutRider">Judged spells left out because their rider is not known: they cannot be kept apart from the held-out riders.</param>
/// <param name="WithoutFeatures">Judged spells left out because no features could be made of them, or they are not in the dataset.</param>
/// <param name="Features">How the features were made.</param>
public sealed record TrainingSet(LabelSet Verdicts, IReadOnlyList<LabelledSpell> Spells, int WithoutRider, int WithoutFeatures, FeatureSettings Features)
{
    public static TrainingSet Of(FeatureTable table, LabelSet verdicts, RuleSettings rules)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(verdicts);
        var judged = table.Rows.Where(r => verdicts.Labels.ContainsKey(r.Key)).ToArray();
        var known = judged.Where(r => r.Spell.Rider is not null)
            .Select(r => new LabelledSpell(r, r.Spell.Rider!, verdicts.Labels[r.Key], Rules.RuleScore.Of(r.Spell, verdicts.Fault, rules)));
        return new(verdicts, [.. known], judged.Count(r => r.Spell.Rider is null), verdicts.Labels.Count - judged.Length, table.Settings);
    }
}
