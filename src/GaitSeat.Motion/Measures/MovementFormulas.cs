using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Measures;

/// <summary>Noise left in the signals whose size of movement is measured: it makes a movement look larger, and is taken off. Legs; s.</summary>
internal readonly record struct MovementNoise(double TreadSd, double TreadSeconds, double WristForwardSd, double WristUpSd);

/// <summary>Rise, time aloft, impact, swing and hand travel of one stride. Lengths in legs.</summary>
internal static class MovementFormulas
{
    public static void Fill(StrideData data, StrideSpan span, StrideSettings settings, MovementNoise noise, Span<double> values)
    {
        var seat = Levels.BetweenSits(data[Channel.Seat], span, settings.LevelHalfSpan);
        var stirrup = Levels.BetweenSits(data[Channel.OverStirrup], span, settings.LevelHalfSpan);
        var half = settings.LevelHalfSpan * span.Length;
        values[(int)StrideMeasure.RiseHeightCm] = Top(seat, span, half);
        values[(int)StrideMeasure.OverStirrupRiseCm] = Top(stirrup, span, half);
        values[(int)StrideMeasure.TimeAloft] = TimeAloft(seat, span, values[(int)StrideMeasure.RiseHeightCm] / 2);
        values[(int)StrideMeasure.SitImpact] = Impact(seat, span, settings.ImpactSpan) / data.StepSeconds;
        var swing = Swing(Levels.BetweenSits(data[Channel.TreadInTrunk], span, settings.LevelHalfSpan), span, noise, data.StepSeconds);
        values[(int)StrideMeasure.StirrupDriftSwingCm] = swing;
        values[(int)StrideMeasure.HandTravelCm] = Travel(
            Levels.BetweenSits(data[Channel.WristForward], span, settings.LevelHalfSpan),
            Levels.BetweenSits(data[Channel.WristUp], span, settings.LevelHalfSpan),
            span,
            noise);
    }

    private static double Top(ReadOnlySpan<double> level, StrideSpan span, double half) =>
        Levels.At(level, Levels.TurningPoint(level, span.Top, half), half);

    /// <summary>Share of the stride above a height, 0..1, the crossings read between samples.</summary>
    private static double TimeAloft(double[] level, StrideSpan span, double height)
    {
        const int places = 200;
        double above = 0;
        var before = Sample.At(level, span.Sit) - height;
        for (var k = 1; k <= places; k++)
        {
            var here = Sample.At(level, span.Sit + span.Length * k / places) - height;
            if (double.IsNaN(here)) return double.NaN;
            if (before > 0 && here > 0) above++;
            else if (before > 0 != here > 0) above += Math.Max(before, here) / (Math.Abs(before) + Math.Abs(here));
            before = here;
        }

        return above / places;
    }

    /// <summary>Greatest fall from sample to sample in the last part of the stride; never below 0.</summary>
    private static double Impact(double[] level, StrideSpan span, double lastShare)
    {
        double most = 0;
        for (var p = span.NextSit - lastShare * span.Length; p <= span.NextSit - 1; p++)
            most = Math.Max(most, Sample.At(level, p) - Sample.At(level, p + 1));
        return double.IsNaN(Sample.At(level, span.NextSit - lastShare * span.Length)) ? double.NaN : most;
    }

    private static double Swing(double[] level, StrideSpan span, MovementNoise noise, double stepSeconds)
    {
        if (StrideHarmonics.Of(level, span) is not { } fit) return double.NaN;
        var independent = Math.Max(1, span.Length * stepSeconds / noise.TreadSeconds);
        for (var k = 0; k < fit.Amplitude.Length; k++)
        {
            // Noise adds 4 sd^2 / n to the squared amplitude of each harmonic on average.
            var squared = Math.Pow(fit.Amplitude[k].Magnitude, 2);
            var left = squared - 4 * noise.TreadSd * noise.TreadSd / independent;
            fit.Amplitude[k] *= Math.Sqrt(Math.Max(0, double.IsNaN(left) ? squared : left) / Math.Max(squared, 1e-300));
        }

        return StrideHarmonics.Range(fit);
    }

    private static double Travel(double[] forward, double[] up, StrideSpan span, MovementNoise noise)
    {
        const int places = 100;
        double sf = 0, su = 0, squares = 0;
        for (var k = 0; k < places; k++)
        {
            var p = span.Sit + span.Length * k / places;
            double f = Sample.At(forward, p), u = Sample.At(up, p);
            sf += f;
            su += u;
            squares += f * f + u * u;
        }

        var spread = squares / places - (sf * sf + su * su) / (places * (double)places);
        var noiseShare = noise.WristForwardSd * noise.WristForwardSd + noise.WristUpSd * noise.WristUpSd;
        return Math.Sqrt(Math.Max(0, spread - (double.IsNaN(noiseShare) ? 0 : noiseShare)));
    }
}
