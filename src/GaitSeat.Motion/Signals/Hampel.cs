namespace GaitSeat.Motion.Signals;

/// <summary>Marks values that stand off the running median by more than so many robust standard deviations.</summary>
internal static class Hampel
{
    /// <summary>Sets <paramref name="outlier"/> where a value is wild; NaN values are neither judged nor counted.</summary>
    /// <param name="halfWidth">Samples on either side.</param>
    /// <param name="floor">Deviations up to this are never outliers, in the signal's unit.</param>
    public static void Mark(ReadOnlySpan<double> values, int halfWidth, double sigmas, double floor, Span<bool> outlier)
    {
        if (outlier.Length != values.Length) throw new ArgumentException($"outlier has {outlier.Length} entries; expected {values.Length}.", nameof(outlier));
        for (var i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i])) continue;

            // Towards an end the window narrows on both sides: a lopsided one takes a slope for a wild value.
            var half = Math.Min(halfWidth, Math.Min(i, values.Length - 1 - i));
            var window = values[(i - half)..(i + half + 1)];
            var median = Robust.Median(window);
            var limit = Math.Max(floor, sigmas * Robust.Sigma(window, median));
            if (Math.Abs(values[i] - median) > limit) outlier[i] = true;
        }
    }
}
