namespace GaitSeat.Motion.Gaits;

/// <summary>The stretches of time in which a gait is looked for.</summary>
internal static class GaitWindows
{
    /// <summary>
    /// Windows of full length at even steps, and ever shorter ones towards both ends, where a gait may have begun just now or be about to end. A segment that is
    /// hardly longer than one window is one window.
    /// </summary>
    /// <param name="start">Begin of the segment, s.</param>
    /// <param name="end">Its end, s.</param>
    /// <returns>Begin and end of each, s, by the time of their middle.</returns>
    public static List<(double From, double To)> Of(double start, double end, GaitSettings settings)
    {
        var length = Math.Min(settings.WindowSeconds, end - start);
        var count = 1 + (int)((end - start - length) / settings.StepSeconds);
        var spare = end - start - length - (count - 1) * settings.StepSeconds;
        var full = Enumerable.Range(0, count).Select(k => start + spare / 2 + k * settings.StepSeconds).Select(s => (s, s + length));
        if (count == 1) return [.. full];
        double[] shorter = [.. Enumerable.Range(1, count).Select(k => length - 2 * k * settings.StepSeconds).TakeWhile(l => l >= settings.EdgeWindowSeconds)];
        return [.. shorter.Reverse().Select(l => (start, start + l)), .. full, .. shorter.Select(l => (end - l, end))];
    }
}
