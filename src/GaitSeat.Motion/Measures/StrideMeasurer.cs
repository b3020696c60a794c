using GaitSeat.Model;
using GaitSeat.Motion.Scale;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Strides;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Measures;

/// <summary>Measures the strides of one segment.</summary>
internal sealed class StrideMeasurer(Sightings sightings, SegmentSignals signals, LegScale scale, MotionSettings settings)
{
    /// <summary>Room on either side of a stride, strides: the spans around its sits reach over its ends.</summary>
    private const double Room = 0.15;

    private readonly MonteCarlo _monteCarlo = new(settings);
    private readonly double _frameSeconds = EvenGrid.MedianStep(sightings.TimeSeconds.AsSpan(signals.Segment.First, signals.Segment.Count)) * settings.Uncertainty.FrameTimingShare;
    private readonly MovementNoise _movementNoise = new(
        signals.TreadInTrunk.NoiseSd,
        signals.TreadInTrunk.NoiseSeconds,
        signals.WristForwardInTrunk.NoiseSd,
        signals.WristUpInTrunk.NoiseSd);

    public (MeasureSet Measures, double TopSeconds) Measure(StrideCandidate stride, int strideSeed)
    {
        var sit = signals.Grid.PositionOf(stride.Start.Seconds);
        var next = signals.Grid.PositionOf(stride.End.Seconds);
        var from = Math.Max(0, (int)Math.Floor(sit - Room * (next - sit)));
        var to = Math.Min(signals.Grid.Count - 1, (int)Math.Ceiling(next + Room * (next - sit)));
        var data = new StrideData([.. Enum.GetValues<Channel>().Select(c => Channels.Of(signals, c).Values[from..(to + 1)])], signals.Grid.StepSeconds);
        var span = new StrideSpan(sit, signals.Grid.PositionOf(stride.TopSeconds), next).From(from);
        var turn = new Measured(Robust.Mean(signals.TurnDeg.AsSpan(from, to + 1 - from)), Robust.Mean(signals.TurnSeDeg.AsSpan(from, to + 1 - from)));
        var noise = Noise(stride, turn);
        var values = StrideFormulas.Of(data, span, settings.Stride, _movementNoise, settings.Stride.HipToBarPctLeg / 100);
        var errors = _monteCarlo.StandardErrors(data, span, _movementNoise, noise, strideSeed);
        errors[(int)StrideMeasure.StrideDuration] = Norm(noise.SitSe, noise.NextSitSe);
        var measures = new MeasureConverter(scale, settings).Convert(values, errors, signals.LegPx[(from + to) / 2]);
        Picture(stride, turn, (from + to) / 2, measures);
        return (measures, stride.TopSeconds);
    }

    private StrideNoise Noise(StrideCandidate stride, Measured turn)
    {
        var sd = new double[Channels.Count];
        var together = new double[Channels.Count];
        for (var c = 0; c < sd.Length; c++)
        {
            var signal = Channels.Of(signals, (Channel)c);
            sd[c] = signal.NoiseSd;
            together[c] = signal.NoiseSeconds;
        }

        return new(
            sd,
            together,
            Norm(stride.Start.Se, _frameSeconds),
            Norm(stride.Start.Se, stride.End.Se, _frameSeconds),
            Norm(stride.End.Se, _frameSeconds),
            double.DegreesToRadians(turn.Value),
            double.DegreesToRadians(turn.StandardError));
    }

    private void Picture(StrideCandidate stride, Measured turn, int middle, MeasureSet measures)
    {
        measures[StrideMeasure.ViewYaw] = turn with { Value = Math.Abs(turn.Value) };
        if (!scale.IsUnknown)
        {
            var cmPerPx = scale.CmPerLeg / signals.LegPx[middle];
            measures[StrideMeasure.Scale] = new(cmPerPx, cmPerPx * scale.RelativeSe);
        }

        var (first, last) = Frames(stride);
        var heights = new double[last - first];
        for (var i = 0; i < heights.Length; i++) heights[i] = sightings.Rider[first + i]?.Height ?? double.NaN;
        var height = Robust.Median(heights);
        var seen = heights.Count(double.IsFinite);
        if (seen > 0) measures[StrideMeasure.RiderHeight] = new(height, Robust.Sigma(heights, height) / Math.Sqrt(seen));
    }

    private (int First, int EndExcl) Frames(StrideCandidate stride)
    {
        var first = Math.Min(Instants.NotBefore(sightings.TimeSeconds, stride.Start.Seconds), sightings.Count - 1);
        return (first, Math.Max(Instants.NotBefore(sightings.TimeSeconds, stride.End.Seconds), first + 1));
    }

    private static double Norm(params ReadOnlySpan<double> parts)
    {
        double sum = 0;
        foreach (var p in parts) sum += p * p;
        return Math.Sqrt(sum);
    }
}
