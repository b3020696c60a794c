using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Measures;

/// <summary>The first harmonics of one stride's signal: its shape without what is above 4 Hz, which is mostly noise.</summary>
internal static class StrideHarmonics
{
    public const int Count = 3;

    private const int Places = 100;

    /// <summary>Time runs in samples from the sit. Null where the stride has a hole.</summary>
    public static HarmonicFit? Of(double[] level, StrideSpan span)
    {
        var from = (int)Math.Ceiling(span.Sit);
        var count = (int)Math.Floor(span.NextSit) - from + 1;
        if (count < 2 || from < 0 || from + count > level.Length) return null;
        var samples = new double[count];
        for (var i = 0; i < count; i++)
        {
            if (double.IsNaN(level[from + i])) return null;
            samples[i] = from + i - span.Sit;
        }

        return HarmonicFit.Fit(samples, level.AsSpan(from, count), 1 / span.Length, Count, 0);
    }

    public static double Range(HarmonicFit fit)
    {
        double least = double.MaxValue, most = double.MinValue;
        for (var k = 0; k < Places; k++)
        {
            var value = fit.PeriodicAt(k / (Places * fit.FrequencyHz));
            least = Math.Min(least, value);
            most = Math.Max(most, value);
        }

        return most - least;
    }

    /// <summary>Where the harmonics are highest, in positions on the samples.</summary>
    public static double? Highest(double[] level, StrideSpan span)
    {
        if (Of(level, span) is not { } fit) return null;
        var best = 0;
        for (var k = 1; k < Places; k++)
            if (fit.PeriodicAt(span.Length * k / Places) > fit.PeriodicAt(span.Length * best / Places)) best = k;
        return span.Sit + span.Length * best / Places;
    }
}
