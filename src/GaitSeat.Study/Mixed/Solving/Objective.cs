namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// Minus twice the log likelihood as a function of θ, the fixed effects (and, where it is not given, the residual variance) profiled out (Bates et al. 2015, equations 34 and 41).
/// </summary>
/// <param name="Residual">Residual variance in scaled units where it is given, else nothing.</param>
/// <param name="Constraint">A contrast held at a value, in scaled units, or nothing.</param>
internal sealed record Objective(Factored Factored, MixedCriterion Criterion, double? Residual = null, HeldContrast? Constraint = null)
{
    public int Rows => Factored.Blocks.Cells.Rows;

    /// <summary>Rows less the fixed effects for REML.</summary>
    public int DegreesOfFreedom => Criterion == MixedCriterion.Reml ? Rows - Factored.Blocks.Scaling.FixedCount : Rows;

    /// <summary>The criterion in the units of the data; infinite where the system cannot be factored.</summary>
    public double At(double[] theta)
    {
        Factored.Update(theta);
        var squares = SumSquares();
        if (!(squares > 0)) return double.PositiveInfinity;
        var spread = Residual is { } given
            ? DegreesOfFreedom * Math.Log(2 * Math.PI * given) + squares / given
            : DegreesOfFreedom * (1 + Math.Log(2 * Math.PI * squares / DegreesOfFreedom));
        var value = Factored.LogDetRandom + FixedPart() + spread - Factored.Blocks.Cells.SumLogWeight + DegreesOfFreedom * 2 * Math.Log(Factored.Blocks.Scaling.OutcomeScale);
        return double.IsNaN(value) ? double.PositiveInfinity : value;
    }

    /// <summary>The criterion with the residual variance free, as a function of θ and the log of that variance (scaled units): the last of <paramref name="point"/>.</summary>
    public double AtWithVariance(double[] point) => (this with { Residual = Math.Exp(point[^1]) }).At(point[..^1]);

    private double SumSquares() => Factored.PenalisedSumSquares + (Constraint?.Cost(Factored) ?? 0);

    private double FixedPart()
    {
        if (Criterion == MixedCriterion.Ml) return 0;
        var basis = Factored.Blocks.Scaling.Basis;
        double logs = 0;
        for (var j = 0; j < basis.Columns; j++) logs += 2 * Math.Log(basis.R[j, j]);
        return Factored.LogDetFixed + logs;
    }
}
