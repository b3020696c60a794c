using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed.Solving;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Mixed;

/// <summary>Estimate ± t × standard error, t with Satterthwaite's degrees of freedom: with few riders the normal's 1.96 is too small.</summary>
public static class WaldInterval
{
    public static ContrastEstimate Of(MixedFit fit, Contrast contrast) => Of(fit.Solution, fit.Variances, contrast);

    internal static ContrastEstimate Of(Solution solution, VarianceParameters variances, Contrast contrast)
    {
        var coordinates = Coordinates(solution, contrast);
        var estimate = Dense.Dot(contrast.Weights, solution.FixedEffects(solution.Factored));
        var error = solution.ResidualSd * Math.Sqrt(FixedPart.Variance(solution.Factored, coordinates));
        var df = variances.DegreesOfFreedom(coordinates);
        var half = error * StudentQuantile.TwoSided(df, solution.Settings.IntervalLevel);
        return new(contrast.Name, estimate, error, df, 2 * StudentT.CDF(0, 1, df, -Math.Abs(estimate / error)), estimate - half, estimate + half, IntervalMethod.Satterthwaite);
    }

    internal static double[] Coordinates(Solution solution, Contrast contrast)
    {
        if (contrast.Weights.Length != solution.Data.Fixed.Count)
            throw new StudyException(StudyProblem.BadData, $"contrast '{contrast.Name}' has {contrast.Weights.Length} weights; the model has {solution.Data.Fixed.Count} fixed effects");
        if (contrast.Weights.All(w => w == 0)) throw new StudyException(StudyProblem.BadData, $"contrast '{contrast.Name}' is zero");
        return solution.Scaling.Basis.ToCoordinates(contrast.Weights);
    }
}
