namespace GaitSeat.Faults.Evaluation;

/// <summary>Spells of like probability: what was said, and what was so.</summary>
/// <param name="Said">Mean probability.</param>
/// <param name="Was">Share with the fault.</param>
public readonly record struct CalibrationBin(int Count, double Said, double Was);

/// <summary>Whether probabilities mean what they say.</summary>
public static class Calibration
{
    /// <summary>Mean squared distance of probability and outcome (Brier 1950).</summary>
    public static double Brier(IReadOnlyList<double> probabilities, IReadOnlyList<bool> isThere)
    {
        Check(probabilities, isThere);
        return Enumerable.Range(0, probabilities.Count).Average(i => Math.Pow(probabilities[i] - (isThere[i] ? 1 : 0), 2));
    }

    /// <summary>Expected calibration error: mean distance of what was said from what was so over bins of equal width, weighted by their spells.</summary>
    public static double ExpectedError(IReadOnlyList<double> probabilities, IReadOnlyList<bool> isThere, int bins = 10) =>
        Bins(probabilities, isThere, bins).Sum(b => b.Count * Math.Abs(b.Said - b.Was)) / probabilities.Count;

    /// <summary>Bins of equal width over 0..1, empty ones left out.</summary>
    public static IReadOnlyList<CalibrationBin> Bins(IReadOnlyList<double> probabilities, IReadOnlyList<bool> isThere, int bins = 10)
    {
        Check(probabilities, isThere);
        ArgumentOutOfRangeException.ThrowIfLessThan(bins, 1);
        return [.. Enumerable.Range(0, probabilities.Count)
            .GroupBy(i => Math.Min(bins - 1, (int)(probabilities[i] * bins))).OrderBy(g => g.Key)
            .Select(g => new CalibrationBin(g.Count(), g.Average(i => probabilities[i]), g.Average(i => isThere[i] ? 1.0 : 0)))];
    }

    private static void Check(IReadOnlyList<double> probabilities, IReadOnlyList<bool> isThere)
    {
        ArgumentNullException.ThrowIfNull(probabilities);
        ArgumentNullException.ThrowIfNull(isThere);
        ArgumentOutOfRangeException.ThrowIfZero(probabilities.Count);
        ArgumentOutOfRangeException.ThrowIfNotEqual(isThere.Count, probabilities.Count);
        if (probabilities.Any(p => !(p is >= 0 and <= 1))) throw new ArgumentException("Probabilities from 0 to 1 are allowed.", nameof(probabilities));
    }
}
