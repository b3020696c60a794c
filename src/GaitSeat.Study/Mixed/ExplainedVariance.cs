using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed;

/// <summary>
/// R² of mixed models: Nakagawa and Schielzeth (2013), doi:10.1111/j.2041-210x.2012.00261.x, with random slopes after Johnson (2014), doi:10.1111/2041-210X.12225.
/// </summary>
/// <param name="Marginal">Share of the variance explained by the fixed effects.</param>
/// <param name="Conditional">Share explained by fixed and random effects together.</param>
/// <param name="FixedVariance">Variance of X β over the rows.</param>
/// <param name="RandomVariances">Per grouping factor: the mean over the rows of z'Σz.</param>
public sealed record ExplainedVariance(double Marginal, double Conditional, double FixedVariance, double[] RandomVariances, double ResidualVariance)
{
    public static ExplainedVariance Of(MixedFit fit)
    {
        var data = fit.Solution.Data;
        var explained = Moments.Of(RowFit.Of(fit).Mean).Variance;
        double[] random = [.. data.Random.Select((t, i) => Mean(t.Columns, fit.Random[i].Covariance))];
        // With weights the residual variance differs from row to row; the mean is the one that adds up.
        var residual = fit.ResidualSd * fit.ResidualSd * (data.Weights?.Average(w => 1 / w) ?? 1);
        var total = explained + random.Sum() + residual;
        return new(explained / total, (explained + random.Sum()) / total, explained, random, residual);
    }

    private static double Mean(IReadOnlyList<DesignColumn> columns, double[,] covariance)
    {
        double sum = 0;
        for (var a = 0; a < columns.Count; a++)
            for (var b = 0; b < columns.Count; b++) sum += covariance[a, b] * Dense.Dot(columns[a].Values, columns[b].Values) / columns[a].Values.Length;
        return sum;
    }
}
