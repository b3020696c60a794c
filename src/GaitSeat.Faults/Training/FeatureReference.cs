using GaitSeat.Faults.Features;
using MathNet.Numerics.Statistics;

namespace GaitSeat.Faults.Training;

/// <summary>How one feature lay among the training spells.</summary>
/// <param name="Edges">Upper edges of all but the last of the bins that hold about the same number each; equal edges are drawn together.</param>
/// <param name="Counts">Training spells in each bin; the last entry counts those without a value.</param>
public sealed record FeatureReference(string Feature, double[] Edges, int[] Counts)
{
    private const int Bins = 10;

    internal static IReadOnlyList<FeatureReference> Of(IReadOnlyList<double[]> vectors) =>
        [.. FeatureCatalogue.All.Select((f, i) => Of(f.Name, [.. vectors.Select(v => v[i])]))];

    internal static FeatureReference Of(string feature, double[] values)
    {
        var known = values.Where(double.IsFinite).ToArray();
        double[] edges = known.Length == 0 ? [] : [.. Enumerable.Range(1, Bins - 1).Select(i => known.Quantile(i / (double)Bins)).Distinct()];
        return new(feature, edges, CountIn(edges, values));
    }

    internal static int[] CountIn(double[] edges, IReadOnlyList<double> values)
    {
        var counts = new int[edges.Length + 2];
        foreach (var value in values)
        {
            if (!double.IsFinite(value)) counts[^1]++;
            else
            {
                var at = Array.BinarySearch(edges, value);
                counts[at < 0 ? ~at : at]++;
            }
        }

        return counts;
    }
}
