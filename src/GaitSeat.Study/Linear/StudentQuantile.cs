using MathNet.Numerics;

namespace GaitSeat.Study.Linear;

/// <summary>
/// Two-sided quantile of Student's t for any degrees of freedom. MathNet's own search ends at 800, which a Satterthwaite interval of a handful of riders goes past.
/// </summary>
public static class StudentQuantile
{
    private const double LargestLog = 300;

    /// <returns>The t with |T| ≤ t at the given level; infinite where it is beyond 1e130.</returns>
    public static double TwoSided(double degreesOfFreedom, double level)
    {
        if (!(degreesOfFreedom > 0)) return double.PositiveInfinity;
        double low = -50, high = LargestLog;
        if (Outside(degreesOfFreedom, high) > 1 - level) return double.PositiveInfinity;
        for (var i = 0; i < 200 && high - low > 1e-15 * Math.Max(1, Math.Abs(high)); i++)
        {
            var middle = (low + high) / 2;
            if (Outside(degreesOfFreedom, middle) > 1 - level) low = middle;
            else high = middle;
        }

        return Math.Exp((low + high) / 2);
    }

    /// <summary>P(|T| > e^logT), by the incomplete beta function (Abramowitz and Stegun 26.7.1).</summary>
    private static double Outside(double df, double logT) => SpecialFunctions.BetaRegularized(df / 2, 0.5, df / (df + Math.Exp(2 * logT)));
}
