namespace GaitSeat.Faults.Training;

/// <summary>
/// What is done to a feature vector before a trainer sees it, learnt from the training spells alone: constant features are left out, missing
/// values become the mean, each is put to mean 0 and SD 1, and a flag for each pattern of absence stands behind them: features that are always
/// missing together share one.
/// </summary>
/// <param name="Kept">Places of the features kept.</param>
/// <param name="Mean">Of the kept features.</param>
/// <param name="Sd">Of the kept features.</param>
/// <param name="Flagged">Places of features whose absence is flagged.</param>
public sealed record FeaturePreparation(int[] Kept, double[] Mean, double[] Sd, int[] Flagged)
{
    /// <summary>A feature that fewer spells have says more about which camera filmed than about the rider.</summary>
    private const int LeastValues = 10;

    public int Width => Kept.Length + Flagged.Length;

    public static FeaturePreparation Learn(IReadOnlyList<double[]> vectors)
    {
        ArgumentNullException.ThrowIfNull(vectors);
        ArgumentOutOfRangeException.ThrowIfZero(vectors.Count);
        var (kept, mean, sd, gaps) = (new List<int>(), new List<double>(), new List<double>(), new Dictionary<string, int>(StringComparer.Ordinal));
        for (var f = 0; f < vectors[0].Length; f++)
        {
            var (count, average, spread) = Moments(vectors, f);
            if (count < Math.Min(LeastValues, vectors.Count) || !(spread > 0)) continue;
            kept.Add(f);
            mean.Add(average);
            sd.Add(spread);
            if (count < vectors.Count) gaps.TryAdd(Absence(vectors, f), f);
        }

        return new([.. kept], [.. mean], [.. sd], [.. gaps.Values.Order()]);
    }

    /// <summary>The vector a trainer sees; <see cref="Width"/> long.</summary>
    public float[] Apply(double[] features)
    {
        ArgumentNullException.ThrowIfNull(features);
        var prepared = new float[Width];
        for (var i = 0; i < Kept.Length; i++)
        {
            var value = features[Kept[i]];
            prepared[i] = double.IsNaN(value) ? 0 : (float)((value - Mean[i]) / Sd[i]);
        }

        for (var i = 0; i < Flagged.Length; i++) prepared[Kept.Length + i] = double.IsNaN(features[Flagged[i]]) ? 1 : 0;
        return prepared;
    }

    private static string Absence(IReadOnlyList<double[]> vectors, int f) =>
        string.Create(vectors.Count, (vectors, f), (absent, of) =>
        {
            for (var i = 0; i < absent.Length; i++) absent[i] = double.IsNaN(of.vectors[i][of.f]) ? '-' : '+';
        });

    private static (int Count, double Mean, double Sd) Moments(IReadOnlyList<double[]> vectors, int f)
    {
        var (count, sum, squares) = (0, 0.0, 0.0);
        foreach (var v in vectors)
            if (!double.IsNaN(v[f])) (count, sum) = (count + 1, sum + v[f]);
        var mean = count == 0 ? double.NaN : sum / count;
        foreach (var v in vectors)
            if (!double.IsNaN(v[f])) squares += (v[f] - mean) * (v[f] - mean);
        return (count, mean, count < 2 ? double.NaN : Math.Sqrt(squares / (count - 1)));
    }
}
