using System.ComponentModel.DataAnnotations;
using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed.Solving;
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
        var random = new Random(settings.Seed);
        var redraw = new Redraw(fit.Solution);
        var estimates = contrasts.Select(_ => new List<double>()).ToArray();
        int singular = 0, failed = 0;
        for (var i = 0; i < settings.Replicates; i++)
        {
            if (Refit.Of(fit.Solution, redraw.Next(random)) is not { } refit)
            {
                failed++;
                continue;
            }

            if (refit.IsSingular) singular++;
            for (var c = 0; c < contrasts.Count; c++) estimates[c].Add(Dense.Dot(contrasts[c].Weights, refit.FixedEffects));
        }

        if (failed > settings.Replicates / 2)
            throw new StudyException(StudyProblem.NoConvergence, $"{failed} of {settings.Replicates} bootstrap fits did not converge; simplify the model");
        return new([.. contrasts.Select((c, k) => Summary(fit, c, estimates[k]))], settings.Replicates, singular, failed);
    }

    private static ContrastEstimate Summary(MixedFit fit, Contrast contrast, List<double> estimates)
    {
        var tail = (1 - fit.Solution.Settings.IntervalLevel) / 2;
        return new(
            contrast.Name, Dense.Dot(contrast.Weights, fit.Estimates), estimates.StandardDeviation(), double.NaN, double.NaN,
            estimates.QuantileCustom(tail, QuantileDefinition.R7), estimates.QuantileCustom(1 - tail, QuantileDefinition.R7), IntervalMethod.Bootstrap);
    }
}
