using GaitSeat.Faults.Features;
using GaitSeat.Faults.Training;

namespace GaitSeat.Faults.Flags;

/// <summary>
/// Why a model thinks so: a measure's features are set to the training mean, and the fall of the log-odds is read. Works alike for every trainer.
/// Measures that say the same share the fall, so each seems smaller than it is.
/// </summary>
internal static class Drivers
{
    private static readonly (string Family, int[] Features)[] Families =
        [.. FeatureCatalogue.All.Select((f, i) => (f.Family, i)).GroupBy(f => f.Family, f => f.i, StringComparer.Ordinal).Select(g => (g.Key, g.ToArray()))];

    /// <summary>Spells asked of the model at once: asking one by one costs a millisecond each, all at once the memory of a season thirty times over.</summary>
    private const int SpellsAtOnce = 256;

    /// <summary>For each row at most as many as the settings say, the strongest first.</summary>
    internal static IReadOnlyList<IReadOnlyList<string>> Of(IReadOnlyList<FeatureRow> rows, FaultModel model, FlagSettings settings) =>
        [.. rows.Chunk(SpellsAtOnce).SelectMany(part => OfPart(part, model, settings))];

    private static IEnumerable<IReadOnlyList<string>> OfPart(FeatureRow[] rows, FaultModel model, FlagSettings settings)
    {
        var odds = LogOdds(model, [.. rows.SelectMany(r => Families.Select(f => Without(r, model, f.Features)).Prepend(r.Values))]);
        var strongest = rows.Select((_, r) => Strongest(odds.AsSpan(r * (Families.Length + 1), Families.Length + 1), settings)).ToArray();
        var asked = rows.Zip(strongest).SelectMany(p => p.Second.Select(features => (Row: p.First, Features: features))).ToArray();
        var alone = LogOdds(model, [.. asked.SelectMany(a => a.Features.Select(f => Without(a.Row, model, [f])))]);
        var said = new Queue<string>();
        var at = 0;
        foreach (var (row, features) in asked)
        {
            said.Enqueue(DriverWords.Of(row, features, Leading(features, alone.AsSpan(at, features.Length))));
            at += features.Length;
        }

        return [.. strongest.Select(s => (IReadOnlyList<string>)[.. s.Select(_ => said.Dequeue())])];
    }

    /// <param name="odds">With everything first, then without each family.</param>
    private static int[][] Strongest(ReadOnlySpan<double> odds, FlagSettings settings)
    {
        var falls = new List<(int[] Features, double Fall)>();
        for (var f = 0; f < Families.Length; f++)
            if (odds[0] - odds[f + 1] is var fall && fall >= settings.LeastDriver) falls.Add((Families[f].Features, fall));
        return [.. falls.OrderByDescending(f => f.Fall).Take(settings.Drivers).Select(f => f.Features)];
    }

    /// <summary>The one of a family's features that alone carries most: without it the odds are lowest.</summary>
    private static int Leading(int[] features, ReadOnlySpan<double> alone)
    {
        var least = 0;
        for (var i = 1; i < alone.Length; i++)
            if (alone[i] < alone[least]) least = i;
        return features[least];
    }

    private static double[] Without(FeatureRow row, FaultModel model, int[] features)
    {
        var preparation = model.Info.Preparation;
        var values = (double[])row.Values.Clone();
        for (var i = 0; i < preparation.Kept.Length; i++)
            if (features.Contains(preparation.Kept[i])) values[preparation.Kept[i]] = preparation.Mean[i];
        return values;
    }

    private static double[] LogOdds(FaultModel model, IReadOnlyList<double[]> vectors)
    {
        const double Edge = 1e-9;
        return [.. model.Probabilities(vectors).Select(p => Math.Clamp(p, Edge, 1 - Edge)).Select(p => Math.Log(p / (1 - p)))];
    }
}
