namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// Var(e) = σ² + s² with s² known for each row: for a given σ² the weights σ² / (σ² + s²) are known and the model is solved as usual;
/// the one number σ² is found outside, by the same Newton steps on its logarithm.
/// </summary>
internal sealed class KnownErrorSolver(MixedData data, MixedSettings settings, Scaling scaling, CellIndex index, double[] variances)
{
    /// <summary>Sizes of σ² tried first, as shares of the mean square about the least-squares fit. At the lowest the residual is taken to be measurement error alone.</summary>
    private static readonly double[] Shares = [1e-4, 1e-3, 1e-2, 0.03, 0.1, 0.2, 0.4, 0.7, 1];

    private double[]? _theta;

    public Solution Solve()
    {
        var start = Shares.MinBy(s => At(s).Minimum.Value);
        _theta = At(start).Minimum.X;
        if (start == Shares[0]) return ToSolution(start, atBound: true);
        var outer = Newton.Minimise(x => At(Math.Exp(x[0])).Minimum.Value, [Math.Log(start)], settings.MaxIterations);
        if (!outer.Converged) throw Solver.NotConverged(outer);
        return ToSolution(Math.Exp(outer.X[0]), atBound: false);
    }

    private Solution ToSolution(double variance, bool atBound)
    {
        var (factored, minimum) = At(variance);
        return new(data with { Weights = Weights(variance), MeasurementVariance = null }, settings, scaling, factored, minimum, variance, atBound);
    }

    private (Factored Factored, Minimum Minimum) At(double variance)
    {
        var factored = new Factored(Solver.BlocksOf(data, settings, scaling, Cells.Of(scaling, index, Weights(variance))));
        var objective = new Objective(factored, settings.Criterion, variance);
        return (factored, Solver.Minimise(objective, _theta ?? Start.Of(scaling, objective.At), settings));
    }

    private double[] Weights(double variance)
    {
        var scaled = variance * scaling.OutcomeScale * scaling.OutcomeScale;
        return Array.ConvertAll(variances, s => scaled / (scaled + s));
    }
}
