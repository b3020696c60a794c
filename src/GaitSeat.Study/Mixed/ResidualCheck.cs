using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace GaitSeat.Study.Mixed;

/// <summary>Whether the residuals look as the model says they should. Large samples refuse any model by a test, so sizes are given and not p values.</summary>
/// <param name="Skewness">0 for a normal.</param>
/// <param name="ExcessKurtosis">0 for a normal; far above it, strides were mismeasured.</param>
/// <param name="BeyondThree">Share beyond three standard deviations; 0.0027 for a normal.</param>
/// <param name="SpreadTrend">Rank correlation of the size of the residual with the fitted value; 0 where the spread is even.</param>
/// <param name="NeighbourCorrelation">Lag-1 correlation of residuals of neighbouring rows of one level of the first factor; above 0, strides in a row are alike and intervals too narrow. Rows must stand in the order of time.</param>
/// <param name="Quantiles">Standardised residuals against normal quantiles, for a plot.</param>
public sealed record ResidualCheck(
    double Skewness, double ExcessKurtosis, double BeyondThree, double SpreadTrend, double NeighbourCorrelation, IReadOnlyList<(double Normal, double Residual)> Quantiles)
{
    public static ResidualCheck Of(MixedFit fit, int quantiles = 200)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(quantiles, 2);
        var rows = RowFit.Of(fit);
        var sorted = rows.Standardised.Order().ToArray();
        return new(
            sorted.Skewness(), sorted.Kurtosis(), sorted.Count(r => Math.Abs(r) > 3) / (double)sorted.Length,
            Correlation.Spearman(rows.Residuals.Select(Math.Abs), rows.Fitted),
            Neighbours(rows.Standardised, fit.Solution.Data.Random[0].Groups.LevelOf),
            [.. Enumerable.Range(0, Math.Min(quantiles, sorted.Length)).Select(i => Point(sorted, (i + 0.5) / Math.Min(quantiles, sorted.Length)))]);
    }

    private static (double Normal, double Residual) Point(double[] sorted, double share) =>
        (Normal.InvCDF(0, 1, share), SortedArrayStatistics.QuantileCustom(sorted, share, QuantileDefinition.R7));

    private static double Neighbours(double[] residuals, int[] level)
    {
        double products = 0, squares = 0;
        for (var i = 1; i < residuals.Length; i++)
        {
            if (level[i] != level[i - 1]) continue;
            products += residuals[i] * residuals[i - 1];
            squares += (residuals[i] * residuals[i] + residuals[i - 1] * residuals[i - 1]) / 2;
        }

        return products / squares;
    }
}
