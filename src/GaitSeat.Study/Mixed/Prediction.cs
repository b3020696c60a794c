using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed.Solving;

namespace GaitSeat.Study.Mixed;

/// <summary>A predicted mean with its standard error, in the unit of the outcome.</summary>
public readonly record struct Predicted(double Value, double StandardError);

/// <summary>Predicted means, for the population and for one level with what it has in common with the others (partial pooling).</summary>
public static class Prediction
{
    /// <param name="fixedRow">A row of X.</param>
    public static Predicted Population(MixedFit fit, ReadOnlySpan<double> fixedRow)
    {
        Check(fixedRow.Length, fit.Fixed.Count, "fixed");
        var variance = FixedPart.Variance(fit.Solution.Factored, fit.Solution.Scaling.Basis.ToCoordinates(fixedRow));
        return new(Dense.Dot(fixedRow, fit.Estimates), fit.ResidualSd * Math.Sqrt(variance));
    }

    /// <summary>The mean of one level, other grouping factors at their mean. The error holds that of the fixed effects, of the level, and of their being estimated together.</summary>
    /// <param name="term">Index of the grouping factor.</param>
    /// <param name="level">Index of the level.</param>
    /// <param name="randomRow">A row of that factor's columns.</param>
    public static Predicted Level(MixedFit fit, ReadOnlySpan<double> fixedRow, int term, int level, ReadOnlySpan<double> randomRow)
    {
        Check(fixedRow.Length, fit.Fixed.Count, "fixed");
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(term, fit.Random.Count);
        Check(randomRow.Length, fit.Random[term].Columns.Count, "random");
        var variance = PredictionVariance.Of(fit.Solution, fixedRow, term, level, randomRow);
        return new(
            Dense.Dot(fixedRow, fit.Estimates) + Dense.Dot(randomRow, fit.Random[term].Effects[level]),
            Math.Sqrt(variance.Random + variance.Fixed));
    }

    private static void Check(int found, int expected, string what)
    {
        if (found != expected) throw new ArgumentException($"{found} {what} values; the model has {expected} {what} columns");
    }
}
