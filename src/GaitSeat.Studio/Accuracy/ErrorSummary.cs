namespace GaitSeat.Studio.Accuracy;

/// <summary>What the errors of one measure come to. NaN where there are none.</summary>
/// <param name="Clips">How many clips gave them.</param>
/// <param name="Mae">Mean size of the error.</param>
/// <param name="P95">Size of error that 95 % of the strides do not pass.</param>
/// <param name="HeldPct">Share of strides whose 95 % interval holds the truth, percent.</param>
/// <param name="MedianHalfWidth">Median half width of the 95 % intervals.</param>
public sealed record ErrorSummary(int Count, int Clips, double Mae, double P95, LimitsOfAgreement Limits, double HeldPct, double MedianHalfWidth, double MeanTruthSize)
{
    public double Bias => Limits.Bias;

    /// <summary>Mean error size over mean size of the truth, percent.</summary>
    public double MaePct => 100 * Mae / MeanTruthSize;

    /// <summary>
    /// Width of the intervals over the width the errors need: median half width over <see cref="P95"/>. 1 is as sharp as can be, 2 is twice too wide;
    /// below 1 the intervals promise too much.
    /// </summary>
    public double Sharpness => MedianHalfWidth / P95;

    public static ErrorSummary Of(IEnumerable<MeasureError> errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var all = errors.ToArray();
        var byClip = all.GroupBy(e => e.Clip).Select(g => g.Select(e => e.Error).ToArray()).ToArray();
        var limits = LimitsOfAgreement.Of(byClip);
        if (all.Length == 0) return new(0, 0, double.NaN, double.NaN, limits, double.NaN, double.NaN, double.NaN);
        var sizes = all.Select(e => Math.Abs(e.Error)).Order().ToArray();
        var held = 100.0 * all.Count(e => e.HeldByInterval) / all.Length;
        return new(
            all.Length,
            byClip.Length,
            sizes.Average(),
            sizes[(int)Math.Ceiling(0.95 * sizes.Length) - 1],
            limits,
            held,
            Median([.. all.Select(e => e.Measured.HalfWidth95).Order()]),
            all.Average(e => Math.Abs(e.Truth)));
    }

    private static double Median(double[] sorted) => (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
}
