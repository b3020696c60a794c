using GaitSeat.Model;

namespace GaitSeat.Motion.Tracks;

/// <summary>Steadies the travel direction: a running majority, then the way the foot points where nothing was said.</summary>
internal static class FacingFill
{
    /// <summary>Half a second on either side outvotes single wrong frames and follows a real turn. Common practice, no source.</summary>
    private const double HalfWindowSeconds = 0.5;

    public static Facing[] Steady(Sightings sightings)
    {
        var seconds = sightings.TimeSeconds;
        var facing = new Facing[seconds.Length];
        int from = 0, to = 0, lead = 0;
        var fallback = ByFoot(sightings);
        for (var i = 0; i < facing.Length; i++)
        {
            while (to < facing.Length && seconds[to] <= seconds[i] + HalfWindowSeconds) lead += Vote(sightings.Facing[to++]);
            while (seconds[from] < seconds[i] - HalfWindowSeconds) lead -= Vote(sightings.Facing[from++]);
            facing[i] = lead > 0 ? Facing.Right : lead < 0 ? Facing.Left : sightings.Facing[i];
            if (facing[i] == Facing.Unknown) facing[i] = fallback;
        }

        return facing;
    }

    private static int Vote(Facing facing) => facing switch { Facing.Right => 1, Facing.Left => -1, _ => 0 };

    private static Facing ByFoot(Sightings sightings)
    {
        var lead = 0;
        for (var i = 0; i < sightings.Count; i++)
        {
            var ahead = sightings[BodyPoint.Toe].XPx[i] - sightings[BodyPoint.Heel].XPx[i];
            if (double.IsFinite(ahead)) lead += Math.Sign(ahead);
        }

        return lead > 0 ? Facing.Right : lead < 0 ? Facing.Left : Facing.Unknown;
    }
}
