using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed.Solving;

namespace GaitSeat.Study.Mixed;

/// <summary>
/// Linear mixed models after Bates, Mächler, Bolker and Walker (2015), J Stat Softw 67(1), doi:10.18637/jss.v067.i01: fixed effects, any number of grouping factors
/// (nested or crossed) with correlated random effects within each, by REML or ML.
/// </summary>
public static class MixedModel
{
    /// <exception cref="StudyException">Bad or too few data, one level, collinear columns, no convergence: the message says which and where.</exception>
    public static MixedFit Fit(MixedData data, MixedSettings? settings = null)
    {
        var solution = Solver.Solve(data, settings ?? new());
        var variances = new VarianceParameters(solution);
        return new(solution, variances)
        {
            Criterion = solution.Settings.Criterion, CriterionValue = solution.Minimum.Value, Rows = data.Rows, Iterations = solution.Minimum.Iterations,
            Fixed = [.. data.Fixed.Select((c, j) => WaldInterval.Of(solution, variances, new(c.Name, Dense.Unit(j, data.Fixed.Count))))],
            FixedCovariance = FixedCovariance(solution), Random = Random(solution),
            ResidualSd = solution.ResidualSd, ResidualAtBound = solution.ResidualAtBound,
        };
    }

    private static double[,] FixedCovariance(Solution solution)
    {
        var count = solution.Data.Fixed.Count;
        var white = Enumerable.Range(0, count).Select(j => FixedPart.Whitened(solution.Factored, solution.Scaling.Basis.ToCoordinates(Dense.Unit(j, count)))).ToArray();
        var result = new double[count, count];
        for (var i = 0; i < count; i++)
            for (var j = 0; j < count; j++) result[i, j] = solution.ResidualSd * solution.ResidualSd * Dense.Dot(white[i], white[j]);
        return result;
    }

    private static RandomEstimate[] Random(Solution solution)
    {
        var effects = Effects.Of(solution);
        return [.. solution.Data.Random.Select((term, t) =>
        {
            var covariance = solution.Covariance(t);
            var sds = Enumerable.Range(0, term.Columns.Count).Select(i => Math.Sqrt(covariance[i, i])).ToArray();
            return new RandomEstimate(
                term.Groups.Name, [.. term.Columns.Select(c => c.Name)], sds, Correlations(covariance, sds), covariance, term.Groups.Levels,
                effects[t], Errors(solution, t), Singularity.Of(solution.Factored.Lambdas[t], term.Columns.Count, solution.Settings.SingularShare));
        })];
    }

    private static double[][] Errors(Solution solution, int term)
    {
        var none = new double[solution.Data.Fixed.Count];
        var width = solution.Data.Random[term].Columns.Count;
        return [.. Enumerable.Range(0, solution.Data.Random[term].Groups.Levels.Count)
            .Select(l => Enumerable.Range(0, width).Select(j => Math.Sqrt(PredictionVariance.Of(solution, none, term, l, Dense.Unit(j, width)).Random)).ToArray())];
    }

    private static double[,] Correlations(double[,] covariance, double[] sds)
    {
        var result = new double[sds.Length, sds.Length];
        for (var i = 0; i < sds.Length; i++)
            for (var j = 0; j < sds.Length; j++) result[i, j] = i == j ? 1 : sds[i] * sds[j] > 0 ? Math.Clamp(covariance[i, j] / (sds[i] * sds[j]), -1, 1) : double.NaN;
        return result;
    }
}
