using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Study.Mixed;

/// <summary>What a mixed model is fitted by.</summary>
public enum MixedCriterion
{
    /// <summary>Restricted maximum likelihood: variances are not biased by the fixed effects.</summary>
    Reml,

    /// <summary>Maximum likelihood: models with different fixed effects can be compared.</summary>
    Ml,
}

/// <summary>How a mixed model is fitted.</summary>
public sealed record MixedSettings
{
    public MixedCriterion Criterion { get; init; } = MixedCriterion.Reml;

    /// <summary>Most Newton steps. No source: 5 to 15 are usual, so this many means that the fit has no optimum.</summary>
    [Range(1, 1000)]
    public int MaxIterations { get; init; } = 60;

    /// <summary>A standard deviation of random effects below this share of the residual one is called singular; 1e-4 is the default of lme4's isSingular.</summary>
    [Range(1e-8, 0.1)]
    public double SingularShare { get; init; } = 1e-4;

    /// <summary>
    /// Most entries of the matrix in which crossed factors hang together, besides the factor with most levels; it is factored some hundred times.
    /// Where every level meets every other, 2000 levels take 2 million entries and 16 MB.
    /// </summary>
    [Range(1, 100_000_000)]
    public int MaxCrossedEntries { get; init; } = 4_000_000;

    /// <summary>Level of intervals.</summary>
    [Range(0.5, 0.999)]
    public double IntervalLevel { get; init; } = 0.95;
}
