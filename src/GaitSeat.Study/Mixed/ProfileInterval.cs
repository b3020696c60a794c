using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed.Solving;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

namespace GaitSeat.Study.Mixed;

/// <summary>
/// The values of a contrast that a likelihood-ratio test does not refuse: deviance within χ²(1) of its minimum, all other parameters at their best for each value.
/// A model fitted by REML is fitted again by maximum likelihood first, since REML criteria of different fixed effects cannot be compared (Bates et al. 2015, section 5.1).
/// </summary>
public static class ProfileInterval
{
    private const double Accuracy = 1e-6;

    /// <exception cref="StudyException">No convergence on the way.</exception>
    public static ContrastEstimate Of(MixedFit fit, Contrast contrast)
    {
        var settings = fit.Solution.Settings;
        var objective = fit.Solution.FreshObjective(MixedCriterion.Ml);
        var coordinates = WaldInterval.Coordinates(fit.Solution, contrast);
        var best = Solver.Minimise(objective, fit.Solution.Theta, settings);
        var center = Dense.Dot(coordinates, FixedPart.Effects(objective.Factored));
        var error = Math.Sqrt(FixedPart.Variance(objective.Factored, coordinates) * objective.Factored.PenalisedSumSquares / objective.DegreesOfFreedom);
        var estimate = Dense.Dot(contrast.Weights, fit.Solution.FixedEffects(objective.Factored));
        var allowed = ChiSquared.InvCDF(1, settings.IntervalLevel);
        var scale = fit.Solution.Scaling.OutcomeScale;
        var pValue = 1 - ChiSquared.CDF(1, Math.Max(0, Rise(center - estimate / scale)));
        return new(contrast.Name, estimate, scale * error, double.NaN, pValue, estimate + scale * Edge(-1), estimate + scale * Edge(1), IntervalMethod.Profile);

        double Rise(double value)
        {
            var held = objective with { Constraint = new(coordinates, value) };
            return Solver.Minimise(held, best.X, settings).Value - best.Value;
        }

        double Edge(int side)
        {
            var outer = 2 * error;
            while (Rise(center + side * outer) < allowed) outer *= 1.5;
            return side * Brent.FindRoot(t => t == 0 ? -allowed : Rise(center + side * t) - allowed, 0, outer, Accuracy * error);
        }
    }
}
