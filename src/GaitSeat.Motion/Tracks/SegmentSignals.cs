using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>
/// Everything that moves in one segment, smooth, on one even grid. Lengths are in legs (thigh plus shank of this rider at this moment), so that a zoom cancels.
/// </summary>
internal sealed record SegmentSignals
{
    public required Segment Segment { get; init; }

    public required EvenGrid Grid { get; init; }

    /// <summary>Times of the grid's samples, s.</summary>
    public required double[] Seconds { get; init; }

    /// <summary>Slow leg length, px, per sample.</summary>
    public required double[] LegPx { get; init; }

    /// <summary>Camera roll that was turned back, rad, per sample.</summary>
    public required double[] RollRad { get; init; }

    /// <summary>Turn out of the picture plane that was taken out of the points, deg, per sample, + turned away.</summary>
    public double[] TurnDeg { get; init; } = [];

    /// <summary>Its standard error, deg, per sample.</summary>
    public double[] TurnSeDeg { get; init; } = [];

    /// <summary>Forward position in the picture, legs, by <see cref="BodyPoint"/>.</summary>
    public required Smoothed[] Forward { get; init; }

    /// <summary>Height in the picture, legs, by <see cref="BodyPoint"/>.</summary>
    public required Smoothed[] Up { get; init; }

    /// <summary>Hip above the trunk anchor; the level is free.</summary>
    public required Smoothed Seat { get; init; }

    /// <summary>Hip above the tread.</summary>
    public required Smoothed OverStirrup { get; init; }

    /// <summary>Trunk against the surroundings, + up; the level is free.</summary>
    public required Smoothed Bounce { get; init; }

    /// <summary>Tread against the surroundings, + up: the stirrup hangs from the saddle, so it shows the bounce where the trunk is lost.</summary>
    public required Smoothed TreadBounce { get; init; }

    /// <summary>Tread forward in the trunk frame; the level is free.</summary>
    public required Smoothed TreadInTrunk { get; init; }

    public required Smoothed WristForwardInTrunk { get; init; }

    public required Smoothed WristUpInTrunk { get; init; }

    public required WayOverGround Way { get; init; }

    /// <summary>Times of the clip's frames in this segment, s, and which of them were followed; the points of the others are bridged.</summary>
    public required (double[] Seconds, bool[] Followed) Frames { get; init; }

    /// <summary>Share of the frames between two instants that were followed, 0..1.</summary>
    public double FollowedShare(double from, double to)
    {
        var (all, followed) = (0, 0);
        for (var i = Instants.NotBefore(Frames.Seconds, from); i < Frames.Seconds.Length && Frames.Seconds[i] <= to; i++)
        {
            all++;
            if (Frames.Followed[i]) followed++;
        }

        return all == 0 ? 0 : followed / (double)all;
    }

    /// <summary>Speed over the ground between two instants, legs a second; NaN where the surroundings were not followed.</summary>
    public double SpeedLegsPerSecond(double from, double to)
    {
        int first = Math.Max(0, (int)Grid.PositionOf(from)), last = Math.Min(Grid.Count - 1, (int)Grid.PositionOf(to));
        return Way.PxPerSecond(from, to) / Robust.Median(LegPx.AsSpan(first, last + 1 - first));
    }
}
