using System.ComponentModel.DataAnnotations;
using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed.Solving;
using GaitSeat.Study.Simulation;
using MathNet.Numerics.Statistics;

namespace GaitSeat.Study.Mixed;

/// <summary>How often and from which seed.</summary>
public sealed record BootstrapSettings
{
    /// <summary>Simulated data sets; 1000 give the ends of a 95 % interval to about a fifteenth of a standard error (normal theory).</summary>
    [Range(20, 1_000_000)]
    public int Replicates { get; init; } = 1000;

    /// <summary>Seed of the random numbers: the same seed gives the same interval.</summary>
    [Range(0, int.MaxValue)]
    public int Seed { get; init; } = 1;
}

/// <summary>Intervals from simulated data, and how the simulation went.</summary>
/// <param name="Singular">Replicates with a spread at zero or a correlation at one.</param>
/// <param name="Failed">Replicates that did not converge; they are left out of the percentiles.</param>
public sealed record BootstrapResult(IReadOnlyList<ContrastEstimate> Contrasts, int Replicates, int Singular, int Failed);

/// <summary>
/// Parametric bootstrap: new random effects and residuals are drawn from the fitted model, which is fitted again to each; the interval is that of the percentiles
/// (Efron and Tibshirani 1993, chapter 13). Where weights come from known measurement errors they stay those of the fit.
/// </summary>
public static class Bootstrap
{
    public static BootstrapResult Of(MixedFit fit, IReadOnlyList<Contrast> contrasts, BootstrapSettings settings)
    {
        foreach (var contrast in contrasts) _ = WaldInterval.Coordinates(fit.Solution, contrast);
        var refits = Refits(fit.Solution, settings);
        return new([.. contrasts.Select(c => Summary(fit, c, refits))], settings.Replicates, refits.Count(r => r.IsSingular), settings.Replicates - refits.Length);
    }

    /// <summary>Those of the simulated data sets that could be fitted.</summary>
    /// <exception cref="StudyException">Fewer than half.</exception>
    internal static Refit[] Refits(Solution solution, BootstrapSettings settings)
    {
        var redraw = new Redraw(solution);
        Refit[] refits = [.. Replicates.Of(settings.Replicates, settings.Seed, random => Refit.Of(solution, redraw.Next(random))).OfType<Refit>()];
        if (refits.Length < settings.Replicates / 2)
            throw new StudyException(StudyProblem.NoConvergence, $"{settings.Replicates - refits.Length} of {settings.Replicates} bootstrap fits did not converge; simplify the model");
        return refits;
    }

    private static ContrastEstimate Summary(MixedFit fit, Contrast contrast, Refit[] refits)
    {
        double[] estimates = [.. refits.Select(r => Dense.Dot(contrast.Weights, r.FixedEffects))];
        var tail = (1 - fit.Solution.Settings.IntervalLevel) / 2;
        return new(
            contrast.Name, Dense.Dot(contrast.Weights, fit.Estimates), estimates.StandardDeviation(), double.NaN, double.NaN,
            estimates.QuantileCustom(tail, QuantileDefinition.R7), estimates.QuantileCustom(1 - tail, QuantileDefinition.R7), IntervalMethod.Bootstrap);
    }
}
