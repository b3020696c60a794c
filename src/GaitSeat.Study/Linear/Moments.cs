namespace GaitSeat.Study.Linear;

/// <summary>Mean and spread in two passes, with the rounding error of the first taken out of the second (Chan, Golub and LeVeque 1983, doi:10.1080/00031305.1983.10483115).</summary>
/// <param name="SumSquares">Sum of squared deviations from the mean.</param>
public readonly record struct Moments(int Count, double Mean, double SumSquares)
{
    /// <summary>With n - 1; NaN below two values.</summary>
    public double Variance => Count > 1 ? SumSquares / (Count - 1) : double.NaN;

    public double Sd => Math.Sqrt(Variance);

    public static Moments Of(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty) return new(0, double.NaN, double.NaN);
        double sum = 0;
        foreach (var v in values) sum += v;
        var first = sum / values.Length;
        double rest = 0, squares = 0;
        foreach (var v in values)
        {
            rest += v - first;
            squares += (v - first) * (v - first);
        }

        return new(values.Length, first + rest / values.Length, squares - rest * rest / values.Length);
    }

    /// <summary>Lag-1 autocorrelation: sum of products of neighbours' deviations over the sum of squares.</summary>
    public static double AutocorrelationLag1(ReadOnlySpan<double> values)
    {
        var all = Of(values);
        double products = 0;
        for (var i = 1; i < values.Length; i++) products += (values[i] - all.Mean) * (values[i - 1] - all.Mean);
        return products / all.SumSquares;
    }
}
