using GaitSeat.Model;
using GaitSeat.Motion.Sessions;

namespace GaitSeat.Motion.Tests.Sessions;

/// <summary>
/// Strides drawn by the errors that the settings describe, written out afresh here: scatter, an error that wanders within a clip (first-order, by the gap in time)
/// and one steady in a clip. Thigh angle 45 deg and index 88 % unless changed.
/// </summary>
internal sealed class MadeSession(int seed, SessionSettings sizes)
{
    private const double StrideSeconds = 0.72;

    private readonly Random _random = new(seed);
    private readonly List<SessionStride> _strides = [];
    private double _thighSlow, _indexSlow, _thighClip, _indexClip, _seconds;
    private int _clip = -1;

    public IReadOnlyList<SessionStride> Strides => _strides;

    /// <summary>Everything but the scatter grows by this.</summary>
    public double Wander { get; init; } = 1;

    /// <summary>Share of a stride's deviation of the rider's own that the next stride keeps; 0: none of their own.</summary>
    public double OwnRhythm { get; init; }

    public MadeSession Clip()
    {
        _clip++;
        _seconds = 0.3;
        (_thighClip, _indexClip) = Pair(sizes.ThighClipDeg, sizes.IndexClipPctLeg);
        (_thighSlow, _indexSlow) = Pair(sizes.ThighSlowDeg, sizes.IndexSlowPctLeg);
        return this;
    }

    public MadeSession Pause(double seconds)
    {
        Go(seconds);
        return this;
    }

    public MadeSession Ride(int strides, double thighChange = 0, double indexChange = 0, string? rein = "left", Facing facing = Facing.Left, string quality = "good")
    {
        double own = 0;
        for (var i = 0; i < strides; i++)
        {
            own = OwnRhythm * own + Math.Sqrt(1 - OwnRhythm * OwnRhythm) * Normal();
            var thigh = 45 + thighChange + sizes.ThighScatterDeg * (OwnRhythm > 0 ? own : Normal()) + Wander * (_thighSlow + _thighClip);
            var index = 88 + indexChange + sizes.IndexScatterPctLeg * (OwnRhythm > 0 ? -own : Normal()) + Wander * (_indexSlow + _indexClip);
            var measures = new MeasureSet
            {
                [StrideMeasure.ThighAngleSit] = new(thigh, 3),
                [StrideMeasure.StirrupLengthIndex] = new(index, 5),
                [StrideMeasure.RiseHeightCm] = new(9 + Normal() * 0.75, 1.5),
            };
            _strides.Add(new(_clip, rein, new(1, _strides.Count + 1, facing, _seconds, _seconds + 0.4, _seconds + StrideSeconds, 0.9, quality, measures)));
            Go(StrideSeconds);
        }

        return this;
    }

    private void Go(double seconds)
    {
        _seconds += seconds;
        var kept = Math.Exp(-seconds / sizes.SlowSeconds);
        var (thigh, index) = Pair(sizes.ThighSlowDeg, sizes.IndexSlowPctLeg);
        _thighSlow = kept * _thighSlow + Math.Sqrt(1 - kept * kept) * thigh;
        _indexSlow = kept * _indexSlow + Math.Sqrt(1 - kept * kept) * index;
    }

    private (double Thigh, double Index) Pair(double thighSd, double indexSd)
    {
        double x = Normal(), y = Normal(), r = sizes.ErrorCorrelation;
        return (thighSd * x, indexSd * (r * x + Math.Sqrt(1 - r * r) * y));
    }

    private double Normal() => MathNet.Numerics.Distributions.Normal.Sample(_random, 0, 1);
}
