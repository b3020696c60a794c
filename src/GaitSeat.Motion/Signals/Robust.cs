namespace GaitSeat.Motion.Signals;

/// <summary>Statistics that a few wild values cannot move. NaN values are left out.</summary>
internal static class Robust
{
    /// <summary>Standard deviations in one median absolute deviation of a normal distribution.</summary>
    public const double SigmasPerMad = 1.4826;

    public static double Median(ReadOnlySpan<double> values)
    {
        var kept = Finite(values);
        if (kept.Length == 0) return double.NaN;
        Array.Sort(kept);
        var half = kept.Length / 2;
        return kept.Length % 2 == 1 ? kept[half] : (kept[half - 1] + kept[half]) / 2;
    }

    /// <summary>Standard deviation from the median absolute deviation about <paramref name="centre"/>.</summary>
    public static double Sigma(ReadOnlySpan<double> values, double centre)
    {
        var away = new double[values.Length];
        for (var i = 0; i < values.Length; i++) away[i] = Math.Abs(values[i] - centre);
        return SigmasPerMad * Median(away);
    }

    public static double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0;
        var count = 0;
        foreach (var v in values)
        {
            if (!double.IsFinite(v)) continue;
            sum += v;
            count++;
        }

        return count == 0 ? double.NaN : sum / count;
    }

    public static double RootMeanSquare(ReadOnlySpan<double> values)
    {
        double sum = 0;
        var count = 0;
        foreach (var v in values)
        {
            if (!double.IsFinite(v)) continue;
            sum += v * v;
            count++;
        }

        return count == 0 ? double.NaN : Math.Sqrt(sum / count);
    }

    private static double[] Finite(ReadOnlySpan<double> values)
    {
        var kept = new double[values.Length];
        var count = 0;
        foreach (var v in values)
            if (double.IsFinite(v)) kept[count++] = v;
        return kept[..count];
    }
}
