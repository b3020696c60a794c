using GaitSeat.Model;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Measures;

/// <summary>How wrong the signals of one stride may be.</summary>
/// <param name="Sd">Noise by <see cref="Channel"/>, legs.</param>
/// <param name="Seconds">How long it hangs together, by channel, s.</param>
/// <param name="SitSe">Standard error of the first sit instant, s.</param>
/// <param name="TopSe">Of the top, s.</param>
/// <param name="NextSitSe">Of the next sit, s.</param>
/// <param name="TurnRad">Turn out of the picture plane that was taken out, rad.</param>
/// <param name="TurnSeRad">Its standard error, rad.</param>
internal sealed record StrideNoise(
    double[] Sd,
    double[] Seconds,
    double SitSe,
    double TopSe,
    double NextSitSe,
    double TurnRad,
    double TurnSeRad);

/// <summary>Standard errors by repeating the formulas on signals spoilt the way the real ones may be. Seeded: the same stride gives the same errors.</summary>
internal sealed class MonteCarlo(MotionSettings settings)
{
    private readonly TurnCorrection _correction = new(settings.Scale);

    public double[] StandardErrors(StrideData data, StrideSpan span, MovementNoise movement, StrideNoise noise, int strideSeed)
    {
        var random = new Random(settings.Uncertainty.Seed ^ (strideSeed * 7919));
        var count = MeasureCatalogue.All.Count;
        double[] sum = new double[count], squares = new double[count];
        var draws = new int[count];
        for (var d = 0; d < settings.Uncertainty.Draws; d++)
        {
            var values = Draw(data, span, movement, noise, random);
            for (var m = 0; m < count; m++)
            {
                if (!double.IsFinite(values[m])) continue;
                sum[m] += values[m];
                squares[m] += values[m] * values[m];
                draws[m]++;
            }
        }

        var errors = new double[count];
        for (var m = 0; m < count; m++)
        {
            var n = draws[m];
            errors[m] = n < 2 ? double.NaN : Math.Sqrt(Math.Max(0, (squares[m] - sum[m] * sum[m] / n) / (n - 1)));
        }

        return errors;
    }

    private double[] Draw(StrideData data, StrideSpan span, MovementNoise movement, StrideNoise noise, Random random)
    {
        // A turn misread by d moves what stands nearer by D to the side by D sin d, and stretches what lies ahead by d tan f.
        var misread = NoiseTrack.Normal(random) * noise.TurnSeRad;
        var stretch = 1 + misread * Math.Tan(noise.TurnRad);
        var spoilt = new double[Channels.Count][];
        for (var c = 0; c < spoilt.Length; c++)
        {
            var channel = (Channel)c;
            var values = (double[])data.Values[c].Clone();
            var steady = NoiseTrack.Normal(random) * Bias(channel) + Sideways(channel) * Math.Sin(misread);
            var factor = Channels.IsAhead(channel) ? stretch : 1;
            for (var i = 0; i < values.Length; i++) values[i] = factor * values[i] + steady;
            NoiseTrack.AddTo(values, noise.Sd[c], noise.Seconds[c] / data.StepSeconds, random);
            spoilt[c] = values;
        }

        double Shift(double se) => double.IsFinite(se) ? NoiseTrack.Normal(random) * se / data.StepSeconds : 0;
        var moved = new StrideSpan(span.Sit + Shift(noise.SitSe), span.Top + Shift(noise.TopSe), span.NextSit + Shift(noise.NextSitSe));
        var bar = settings.Stride.HipToBarPctLeg + NoiseTrack.Normal(random) * settings.Stride.HipToBarSePctLeg;
        return StrideFormulas.Of(new(spoilt, data.StepSeconds), moved, settings.Stride, movement, bar / 100);
    }

    private double Bias(Channel channel)
    {
        var u = settings.Uncertainty;
        return Channels.Point(channel) switch
        {
            BodyPoint.Hip => u.HipBiasPctLeg,
            BodyPoint.Knee => u.KneeBiasPctLeg,
            BodyPoint.Ankle => u.AnkleBiasPctLeg,
            BodyPoint.Heel or BodyPoint.Toe => u.FootBiasPctLeg,
            BodyPoint.Shoulder => u.ShoulderBiasPctLeg,
            BodyPoint.Ear => u.EarBiasPctLeg,
            _ => 0,
        } / 100;
    }

    private double Sideways(Channel channel) =>
        Channels.Point(channel) is { } point && Channels.IsForward(channel) ? _correction.NearerLegs(point) : 0;
}
