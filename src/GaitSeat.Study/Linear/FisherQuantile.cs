using MathNet.Numerics;

namespace GaitSeat.Study.Linear;

/// <summary>Quantile of Fisher's F for any degrees of freedom, fractions too. MathNet's own search gives up where hundreds of degrees make the distribution a spike.</summary>
public static class FisherQuantile
{
    private const double LargestLog = 300;

    /// <returns>The f with P(F ≤ f) = <paramref name="probability"/>.</returns>
    public static double Of(double df1, double df2, double probability)
    {
        double low = -LargestLog, high = LargestLog;
        for (var i = 0; i < 200 && high - low > 1e-15 * Math.Max(1, Math.Abs(high)); i++)
        {
            var middle = (low + high) / 2;
            if (Below(df1, df2, middle) < probability) low = middle;
            else high = middle;
        }

        return Math.Exp((low + high) / 2);
    }

    /// <summary>P(F ≤ e^logF), by the incomplete beta function (Abramowitz and Stegun 26.6.2).</summary>
    private static double Below(double df1, double df2, double logF) => SpecialFunctions.BetaRegularized(df1 / 2, df2 / 2, 1 / (1 + df2 / df1 * Math.Exp(-logF)));
}
