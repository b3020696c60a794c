using GaitSeat.Study.Mixed.Solving;

namespace GaitSeat.Study.Mixed;

/// <summary>Estimates of one grouping factor, in the units of the data.</summary>
/// <param name="Correlations">NaN where a standard deviation is zero.</param>
/// <param name="Effects">Level × column: how far each level is from the mean of all (BLUP), shrunk by how little it tells.</param>
/// <param name="ConditionalSe">Standard error of each effect were the fixed effects known.</param>
/// <param name="IsSingular">A spread is zero, or a correlation one, as far as the data tell.</param>
public sealed record RandomEstimate(
    string Name, IReadOnlyList<string> Columns, double[] StandardDeviations, double[,] Correlations, double[,] Covariance,
    IReadOnlyList<string> Levels, double[][] Effects, double[][] ConditionalSe, bool IsSingular);

/// <summary>A fitted linear mixed model.</summary>
public sealed record MixedFit
{
    internal MixedFit(Solution solution, VarianceParameters variances) => (Solution, Variances) = (solution, variances);

    public required MixedCriterion Criterion { get; init; }

    /// <summary>REML criterion or deviance: minus twice the (restricted) log likelihood, constants included, as lme4 reports it.</summary>
    public required double CriterionValue { get; init; }

    public double LogLikelihood => -CriterionValue / 2;

    public required int Rows { get; init; }

    public required IReadOnlyList<ContrastEstimate> Fixed { get; init; }

    /// <summary>Covariance of the fixed effects.</summary>
    public required double[,] FixedCovariance { get; init; }

    public required IReadOnlyList<RandomEstimate> Random { get; init; }

    /// <summary>σ: with known measurement variances the spread beyond them.</summary>
    public required double ResidualSd { get; init; }

    /// <summary>The known measurement variances explain all of the residual; σ is at its lower bound.</summary>
    public required bool ResidualAtBound { get; init; }

    public required int Iterations { get; init; }

    /// <summary>Some term's covariance is at the boundary of what is allowed; its effects should be read with care, or the term simplified.</summary>
    public bool IsSingular => Random.Any(r => r.IsSingular);

    internal Solution Solution { get; }

    internal VarianceParameters Variances { get; }

    internal double[] Estimates => [.. Fixed.Select(f => f.Estimate)];
}
