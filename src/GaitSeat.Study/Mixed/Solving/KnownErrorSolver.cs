namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// Var(e) = σ² + s² with s² known for each row: for a given σ² the weights σ² / (σ² + s²) are known and the rows are summed up with them.
/// log σ² joins θ among the variables of the search; the rows are gone through once per new value of it.
/// </summary>
internal sealed class KnownErrorSolver(MixedData data, MixedSettings settings, Scaling scaling, PackedRows rows, double[] variances)
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
        var minimum = Newton.Minimise(At, FirstPoint(), settings.MaxIterations);
        var variance = Math.Exp(minimum.X[^1]);
        if (variance <= LowestShare)
        {
            var bound = ObjectiveAt(LowestShare);
            return Finish(bound, Solver.Minimise(bound, Resized(minimum.X[..^1], variance, LowestShare), settings), LowestShare, atBound: true);
        }

        if (!minimum.Converged) throw Solver.NotConverged(minimum);
        var objective = ObjectiveAt(variance);
        return Finish(objective, Solver.Tidy(objective, minimum with { X = minimum.X[..^1] }), variance, atBound: false);
    }

    /// <summary>θ is relative to σ: where σ² is another share, the same spread of riders is another θ.</summary>
    private double[] FirstPoint()
    {
        var theta = Start.Of(scaling, ObjectiveAt(Shares[^1]).At);
        return Shares.Select(s => (double[])[.. Resized(theta, Shares[^1], s), Math.Log(s)]).MinBy(At)!;
    }

    private static double[] Resized(double[] theta, double from, double to) => Array.ConvertAll(theta, v => v * Math.Sqrt(from / to));

    private Solution Finish(Objective objective, Minimum minimum, double variance, bool atBound) =>
        new(data with { Weights = Weights(variance), MeasurementVariance = null }, settings, scaling, objective.Factored, minimum, variance, atBound);

    private double At(double[] point) => ObjectiveAt(Math.Max(Math.Exp(point[^1]), LowestShare * LowestShare)).At(point[..^1]);

    private Objective ObjectiveAt(double variance)
    {
        if (!_known.TryGetValue(variance, out var factored))
        {
            if (_known.Count >= Remembered) _known.Clear();
            _known.Add(variance, factored = new(Solver.BlocksOf(data, settings, scaling, rows.Sum(Weights(variance)))));
        }

        return new(factored, settings.Criterion, variance);
    }

    private double[] Weights(double variance)
    {
        var scaled = variance * scaling.OutcomeScale * scaling.OutcomeScale;
        return Array.ConvertAll(variances, s => scaled / (scaled + s));
    }
}
