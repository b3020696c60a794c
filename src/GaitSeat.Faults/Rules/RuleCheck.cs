using GaitSeat.Model;

namespace GaitSeat.Faults.Rules;

/// <summary>Holds one spell against one rule.</summary>
/// <remarks>
/// The probability of a rule of several conditions is a lower bound that holds whatever the errors have in common (Fréchet):
/// all of n: sum of p minus (n - 1); any of n: the greatest p. The least p, the tempting choice, is the upper bound of "all" and would
/// say more than is known.
/// </remarks>
internal static class RuleCheck
{
    /// <summary>The finding, or null where data are missing, too few strides have them, or it is not probable enough.</summary>
    public static Finding? Check(FaultRule rule, SpellStrides spell, RuleSettings settings)
    {
        var measured = spell.Strides.Where(s => rule.All.All(c => SpellStrides.Has(s, c.Measure))).ToArray();
        if (measured.Length < settings.MinimumStrides) return null;
        var means = rule.Conditions.ToDictionary(c => c, c => Mean(c, measured, settings.MinimumStrides));
        var probability = Probability(rule, means);
        if (probability < settings.MinimumProbability) return null;
        var showing = measured.Where(s => Shows(rule, s)).ToArray();
        return showing.Length == 0 ? null : Make(rule, spell, means, probability, measured, showing);
    }

    private static Measured Mean(Condition condition, Stride[] strides, int atLeast)
    {
        var values = strides.Where(s => SpellStrides.Has(s, condition.Measure)).Select(s => s.Measures[condition.Measure]).ToArray();
        return values.Length < atLeast ? Measured.Missing : SpellMean.Of(values);
    }

    private static double Probability(FaultRule rule, Dictionary<Condition, Measured> means)
    {
        var parts = rule.All.Select(c => c.Probability(means[c])).ToList();
        if (rule.Any.Length > 0) parts.Add(rule.Any.Max(c => c.Probability(means[c])));
        return Math.Max(0, parts.Sum() - (parts.Count - 1));
    }

    private static bool Shows(FaultRule rule, Stride stride)
    {
        bool Past(Condition c) => c.IsPast(stride.Measures[c.Measure].Value);
        return rule.All.All(Past) && (rule.Any.Length == 0 || rule.Any.Any(Past));
    }

    private static Finding Make(
        FaultRule rule, SpellStrides spell, Dictionary<Condition, Measured> means, double probability, Stride[] measured, Stride[] showing)
    {
        var first = rule.All[0];
        var said = rule.All.Concat(rule.Any.Where(c => c.IsPast(means[c].Value)))
            .Select(c => c.Phrase.Replace("{0}", Words.WithInterval(means[c]), StringComparison.Ordinal));
        return new(
            spell.Spell.Number, rule.Fault, MeasureCatalogue.Get(first.Measure).Column, means[first], first.Threshold,
            MeasureCatalogue.Get(first.Measure).Unit, probability, rule.Source, showing[0].StartSeconds, showing[^1].EndSeconds,
            [.. showing.Select(s => s.Number)],
            Words.Line(string.Join(", ", said), showing.Length, measured.Length, rule.Against, rule.Source));
    }
}
