using GaitSeat.Model;

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
        var frames = segment.First..segment.EndExcl;
        PointTrack hip = sightings[BodyPoint.Hip], knee = sightings[BodyPoint.Knee];
        var seconds = sightings.TimeSeconds[frames];
        double across = Speed(hip.XPx, sightings.Surroundings.XPx), down = Speed(hip.YPx, sightings.Surroundings.YPx);
        var thighPx = Enumerable.Range(segment.First, segment.Count).Select(i => hip[i].DistanceTo(knee[i])).Where(double.IsFinite).DefaultIfEmpty().Max();
        var way = across * (seconds[^1] - seconds[0]);
        var roll = Math.Atan2(down, across);
        return way > settings.RollWayThighs * thighPx && Math.Abs(roll) <= double.DegreesToRadians(settings.MaxRollDeg) ? roll : 0;

        double Speed(double[] hipPx, double[] groundStepsPx)
        {
            var steps = Array.ConvertAll(groundStepsPx[frames], s => segment.Sign * s);
            steps[0] = double.NaN;
            return new WayOverGround(seconds, Array.ConvertAll(hipPx[frames], p => segment.Sign * p), steps).PxPerSecond(seconds[0], seconds[^1]);
        }
    }
}
