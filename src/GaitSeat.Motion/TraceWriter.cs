using GaitSeat.Model;
using GaitSeat.Motion.Gaits;
using GaitSeat.Motion.Measures;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Strides;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion;

/// <summary>Collects the smoothed signals of all segments, read at the frames.</summary>
internal sealed class TraceWriter
{
    private readonly Sightings _sightings;
    private readonly TurnCorrection _correction;
    private readonly MotionTrace _trace;

    public TraceWriter(Sightings sightings, TurnCorrection correction)
    {
        (_sightings, _correction) = (sightings, correction);
        double[] Missing() => Smoothed.Missing(sightings.Count).Values;
        _trace = new()
        {
            TimeSeconds = [.. sightings.TimeSeconds],
            SeatPctLeg = Missing(),
            BouncePctLeg = Missing(),
            TreadForwardPctLeg = Missing(),
            ThighAngleDeg = Missing(),
            Points = [.. sightings.Points.Select(p => new PointTrack(Missing(), Missing(), [.. p.Confidence], [.. p.SpreadPx]))],
        };
    }

    public MotionTrace Finish() => _trace;

    public void Signals(SegmentSignals signals)
    {
        double[] hipF = signals.Forward[(int)BodyPoint.Hip].Values, hipU = signals.Up[(int)BodyPoint.Hip].Values;
        double[] kneeF = signals.Forward[(int)BodyPoint.Knee].Values, kneeU = signals.Up[(int)BodyPoint.Knee].Values;
        double seat = Robust.Median(signals.Seat.Values), bounce = Robust.Mean(signals.Bounce.Values), tread = Robust.Mean(signals.TreadInTrunk.Values);
        for (var i = signals.Segment.First; i < signals.Segment.EndExcl; i++)
        {
            var at = signals.Grid.PositionOf(_sightings.TimeSeconds[i]);
            _trace.SeatPctLeg[i] = 100 * (Sample.At(signals.Seat.Values, at) - seat);
            _trace.BouncePctLeg[i] = 100 * (Sample.At(signals.Bounce.Values, at) - bounce);
            _trace.TreadForwardPctLeg[i] = 100 * (Sample.At(signals.TreadInTrunk.Values, at) - tread);
            _trace.ThighAngleDeg[i] = Angles.AgainstDown(
                Sample.At(kneeF, at) - Sample.At(hipF, at),
                Sample.At(kneeU, at) - Sample.At(hipU, at));
            Points(signals, i, at);
        }
    }

    /// <summary>Draws the zero of the seat through the sits of a spell: a straight line from sit to sit, level beyond the first and the last.</summary>
    public void Sits(SegmentSignals signals, RawSpell spell, List<StrideCandidate> cut)
    {
        var seconds = new List<double>();
        var levels = new List<double>();
        var middle = Robust.Median(signals.Seat.Values);
        foreach (var sit in cut.SelectMany(s => new[] { s.Start, s.End }))
        {
            if (seconds.Count > 0 && sit.Seconds <= seconds[^1]) continue;
            var level = 100 * (Sample.At(signals.Seat.Values, signals.Grid.PositionOf(sit.Seconds)) - middle);
            if (!double.IsFinite(level)) continue;
            seconds.Add(sit.Seconds);
            levels.Add(level);
        }

        if (seconds.Count < 2) return;
        for (var i = signals.Segment.First; i < signals.Segment.EndExcl; i++)
        {
            var t = _sightings.TimeSeconds[i];
            if (t < spell.StartSeconds || t >= spell.EndSeconds) continue;
            _trace.SeatPctLeg[i] -= Baseline(seconds, levels, t);
        }
    }

    private static double Baseline(List<double> seconds, List<double> levels, double t)
    {
        if (t <= seconds[0]) return levels[0];
        if (t >= seconds[^1]) return levels[^1];
        var k = seconds.FindIndex(s => s > t);
        var share = (t - seconds[k - 1]) / (seconds[k] - seconds[k - 1]);
        return levels[k - 1] + share * (levels[k] - levels[k - 1]);
    }

    /// <summary>Where the points are seen in the picture: camera roll and turn put back.</summary>
    private void Points(SegmentSignals signals, int frame, double at)
    {
        double leg = Sample.At(signals.LegPx, at), turn = Sample.At(signals.TurnDeg, at), hip = Sample.At(signals.Forward[(int)BodyPoint.Hip].Values, at);
        for (var p = 0; p < _trace.Points.Length; p++)
        {
            var forward = leg * (hip + _correction.AsSeen((BodyPoint)p, Sample.At(signals.Forward[p].Values, at) - hip, 1, turn));
            var up = Sample.At(signals.Up[p].Values, at) * leg;
            var (s, c) = Math.SinCos(Sample.At(signals.RollRad, at));
            double x = signals.Segment.Sign * forward, y = -up;
            _trace.Points[p].XPx[frame] = _sightings.WidthPx / 2.0 + c * x - s * y;
            _trace.Points[p].YPx[frame] = _sightings.HeightPx / 2.0 + s * x + c * y;
        }
    }
}
