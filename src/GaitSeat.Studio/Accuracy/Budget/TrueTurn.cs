using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>
/// The true turn of the rider out of the picture plane with the sign of <see cref="Sightings.KnownTurnDeg"/>. Truth files differ in the sign of their yaw,
/// so it is read from the points themselves: along the picture a point stands at F cos f + N sin f (F forward, N towards the near side, f the turn).
/// </summary>
public static class TrueTurn
{
    /// <summary>Turn in one frame, deg; NaN where the file has no places in space.</summary>
    public static double Of(FrameTruth frame, Facing facing)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var points = frame.Points.Values.Where(p => p.Metres is not null).ToArray();
        if (points.Length < 3) return double.NaN;
        var sign = (frame.Facing ?? facing) == Facing.Left ? -1 : 1;
        double meanF = points.Average(p => p.Metres!.Value.Forward), meanN = points.Average(p => p.Metres!.Value.Near), meanX = points.Average(p => p.Px.X);
        double ff = 0, fn = 0, nn = 0, fx = 0, nx = 0;
        foreach (var p in points)
        {
            double f = p.Metres!.Value.Forward - meanF, n = p.Metres.Value.Near - meanN, x = sign * (p.Px.X - meanX);
            ff += f * f;
            fn += f * n;
            nn += n * n;
            fx += f * x;
            nx += n * x;
        }

        return double.RadiansToDegrees(Math.Atan2(ff * nx - fn * fx, nn * fx - fn * nx));
    }
}
