namespace GaitSeat.Study.Mixed.Solving;

/// <summary>A fitted model with all that later questions need. The factored system stays at the optimum: whoever moves θ makes one of their own.</summary>
/// <param name="ResidualVariance">In scaled units.</param>
internal sealed record Solution(MixedData Data, MixedSettings Settings, Scaling Scaling, Factored Factored, Minimum Minimum, double ResidualVariance, bool ResidualAtBound)
{
    public double[] Theta => Minimum.X;

    public double ResidualSd => Scaling.OutcomeScale * Math.Sqrt(ResidualVariance);

    public Objective Objective => new(Factored, Settings.Criterion);

    /// <summary>A system of one's own, on the same blocks.</summary>
    public Objective FreshObjective(MixedCriterion criterion) => new(new(Factored.Blocks), criterion);

    /// <summary>Fixed effects of the columns of X.</summary>
    public double[] FixedEffects(Factored factored)
    {
        var scaled = FixedPart.Effects(factored);
        for (var j = 0; j < scaled.Length; j++) scaled[j] = scaled[j] * Scaling.OutcomeScale + Scaling.LeastSquares[j];
        return Scaling.Basis.ToColumns(scaled);
    }

    /// <summary>Relative covariance factor of a term, for its columns as they were given: T Λ, in the unit of the outcome over that of the residual.</summary>
    public double[,] Covariance(int term)
    {
        var slopes = Scaling.Slopes[term];
        var lambda = Factored.Lambdas[term];
        var columns = Enumerable.Range(0, slopes.Width)
            .Select(j => slopes.ToOriginal([.. Enumerable.Range(0, slopes.Width).Select(i => lambda[i * slopes.Width + j])])).ToArray();
        var variance = ResidualSd * ResidualSd;
        var result = new double[slopes.Width, slopes.Width];
        for (var a = 0; a < slopes.Width; a++)
            for (var b = 0; b < slopes.Width; b++) result[a, b] = variance * columns.Sum(c => c[a] * c[b]);
        return result;
    }
}
