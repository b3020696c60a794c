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

    /// <summary>At most as many as the settings say, the strongest first.</summary>
    internal static IReadOnlyList<string> Of(FeatureRow row, FaultModel model, FlagSettings settings)
    {
        var odds = LogOdds(model, [row.Values, .. Families.Select(f => Without(row, model, f.Features))]);
        var strongest = Families.Select((f, i) => (f.Features, Fall: odds[0] - odds[i + 1])).Where(f => f.Fall >= settings.LeastDriver)
            .OrderByDescending(f => f.Fall).Take(settings.Drivers).ToArray();
        return [.. strongest.Select(f => DriverWords.Of(row, f.Features, Leading(row, model, f.Features)))];
    }

    /// <summary>The one of a family's features that alone carries most.</summary>
    private static int Leading(FeatureRow row, FaultModel model, int[] features)
    {
        var odds = LogOdds(model, [.. features.Select(f => Without(row, model, [f]))]);
        return features[Array.IndexOf(odds, odds.Min())];
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
