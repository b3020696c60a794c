using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>
/// How far the camera leans, from the way the rider goes over the ground: on level ground that way is level. A slope of the ground reads as a lean, so that a steep one is left alone.
/// The rider's hip is about as high as the lens, so that her coming nearer moves it little up or down (0.3 m apart and growing by 5 % a second: 0.3 deg).
/// </summary>
internal static class TravelRoll
{
    /// <returns>Mean roll of the picture over a segment, rad, clockwise on screen; 0 where it cannot be told.</returns>
    public static double Of(Sightings sightings, Segment segment, SegmentSettings settings)
    {
        LeastSquares across = new(2), down = new(2);
        double groundX = 0, groundY = 0, legs = 0;
        var followed = 0;
        for (var i = segment.First; i < segment.EndExcl; i++)
        {
            double x = sightings.Surroundings.XPx[i], y = sightings.Surroundings.YPx[i];
            if (i > segment.First && double.IsFinite(x) && double.IsFinite(y)) (groundX, groundY, followed) = (groundX + x, groundY + y, followed + 1);
            PointPx hip = sightings[BodyPoint.Hip][i], knee = sightings[BodyPoint.Knee][i];
            if (hip.IsMissing) continue;
            double[] row = [1, sightings.TimeSeconds[i] - sightings.TimeSeconds[segment.First]];
            across.Add(row, segment.Sign * (hip.X - groundX));
            down.Add(row, segment.Sign * (hip.Y - groundY));
            if (!knee.IsMissing) legs = Math.Max(legs, hip.DistanceTo(knee));
        }

        if (followed * 2 < segment.Count || across.Solve() is not { } a || down.Solve() is not { } d) return 0;
        var way = a.Solution[1] * (sightings.TimeSeconds[segment.EndExcl - 1] - sightings.TimeSeconds[segment.First]);
        var roll = Math.Atan2(d.Solution[1], a.Solution[1]);
        return way > settings.RollWayThighs * legs && Math.Abs(roll) <= double.DegreesToRadians(settings.MaxRollDeg) ? roll : 0;
    }
}
