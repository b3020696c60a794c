using GaitSeat.Faults.Features;
using GaitSeat.Faults.Rules;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Flags;

/// <summary>Scores spells with the models in use, the rules standing as a floor, and says why.</summary>
/// <param name="models">Models in use; a fault without one is left to its rule.</param>
public sealed class Flagger(IReadOnlyDictionary<Fault, FaultModel> models, RuleSettings rules, FlagSettings settings)
{
    private static readonly Fault[] Faults = Enum.GetValues<Fault>();

    /// <summary>Every spell for every fault, in the order of the rows and then of <see cref="Fault"/>.</summary>
    public IReadOnlyList<SpellScore> Score(FeatureTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var told = models.ToDictionary(m => m.Key, m => m.Value.Probabilities(table.Rows));
        return [.. table.Rows.AsParallel().AsOrdered().SelectMany((row, i) => OfRow(row, told, i))];
    }

    /// <summary>The flagged scores with their reasons.</summary>
    public IReadOnlyList<Flag> Flag(IReadOnlyList<SpellScore> scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        var flagged = scores.Where(s => s.IsFlagged).ToArray();
        var drivers = flagged.Where(s => models.ContainsKey(s.Fault) && s.Probability >= settings.FlagProbability).GroupBy(s => s.Fault)
            .SelectMany(g => g.Zip(Drivers.Of([.. g.Select(s => s.Row)], models[g.Key], settings))).ToDictionary(d => (d.First.Row.Key, d.First.Fault), d => d.Second);
        return [.. flagged.Select(s => new Flag(s, ReasonsOf(s, drivers.GetValueOrDefault((s.Row.Key, s.Fault))), s.Rule?.StartSeconds ?? s.Row.Spell.Spell.StartSeconds, s.Rule?.EndSeconds ?? s.Row.Spell.Spell.EndSeconds))];
    }

    private IEnumerable<SpellScore> OfRow(FeatureRow row, Dictionary<Fault, double[]> told, int index)
    {
        var found = RuleFindings.Find([row.Spell.Spell], row.Spell.Strides, rules).ToDictionary(f => f.Fault);
        foreach (var fault in Faults)
        {
            var rule = found.GetValueOrDefault(fault);
            yield return told.TryGetValue(fault, out var probabilities)
                ? new(row, fault, probabilities[index], rule, models[fault].Hash, probabilities[index] >= settings.FlagProbability || rule?.ProbabilityPastThreshold >= settings.ClearBreachProbability)
                : new(row, fault, RuleScore.Of(row.Spell, fault, rules), rule, null, rule is not null);
        }
    }

    private static IReadOnlyList<string> ReasonsOf(SpellScore score, IReadOnlyList<string>? drivers) =>
        drivers is { Count: > 0 } ? drivers : score.Rule is { } rule ? [rule.Summary] : ["many small signs together, none stands out"];
}
