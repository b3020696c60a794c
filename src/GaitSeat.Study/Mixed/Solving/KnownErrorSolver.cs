namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// Var(e) = σ² + s² with s² known for each row: for a given σ² the weights σ² / (σ² + s²) are known and the rows are summed up with them.
/// log σ² joins θ among the variables of the search; the rows are gone through once per new value of it.
/// </summary>
internal sealed class KnownErrorSolver(MixedData data, MixedSettings settings, Scaling scaling, CellIndex index, double[] variances)
{
    /// <summary>Sizes of σ² tried first, as shares of the mean square about the least-squares fit.</summary>
    private static readonly double[] Shares = [1e-3, 1e-2, 0.03, 0.1, 0.3, 0.7];

    /// <summary>Below this share the residual is taken to be measurement error alone.</summary>
    private const double LowestShare = 1e-4;

    /// <summary>One Newton step asks for five values of σ²: the point and two to either side.</summary>
    private const int Remembered = 8;

    private readonly Dictionary<double, Factored> _known = [];

    public Solution Solve()
    {
        var starts = Shares.Select(s => (double[])[.. Start.Of(scaling, ObjectiveAt(s).At), Math.Log(s)]);
        var minimum = Newton.Minimise(At, starts.MinBy(At)!, settings.MaxIterations);
        var variance = Math.Exp(minimum.X[^1]);
        if (variance <= LowestShare) return Finish(LowestShare, Array.ConvertAll(minimum.X[..^1], v => v * Math.Sqrt(variance / LowestShare)), atBound: true);
        if (!minimum.Converged) throw Solver.NotConverged(minimum);
        return Finish(variance, minimum.X[..^1], atBound: false);
    }

    private Solution Finish(double variance, double[] theta, bool atBound)
    {
        var objective = ObjectiveAt(variance);
        var minimum = Solver.Minimise(objective, theta, settings);
        var weighted = data with { Weights = Weights(variance), MeasurementVariance = null };
        return new(weighted, settings, scaling, objective.Factored, minimum, variance, atBound);
    }

    private double At(double[] point) => ObjectiveAt(Math.Max(Math.Exp(point[^1]), LowestShare * LowestShare)).At(point[..^1]);

    private Objective ObjectiveAt(double variance)
    {
        if (!_known.TryGetValue(variance, out var factored))
        {
            if (_known.Count >= Remembered) _known.Clear();
            _known.Add(variance, factored = new(Solver.BlocksOf(data, settings, scaling, Cells.Of(scaling, index, Weights(variance)))));
        }

        return new(factored, settings.Criterion, variance);
    }

    private double[] Weights(double variance)
    {
        var scaled = variance * scaling.OutcomeScale * scaling.OutcomeScale;
        return Array.ConvertAll(variances, s => scaled / (scaled + s));
    }
}
