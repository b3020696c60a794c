using GaitSeat.Model;

namespace GaitSeat.Motion.Tracks;

/// <summary>
/// Takes the turn of the rider out of the picture plane out of the points. A point that stands nearer to the camera than the hip by D shows, f turned away, at
/// x' = x cos f + D sin f ahead of it (the geometry of a far camera); knee and foot stand out round the horse, which is 4 deg of thigh at f = 8 deg.
/// </summary>
internal sealed class TurnCorrection(ScaleSettings settings)
{
    /// <summary>How much nearer to the camera than the hip a point stands, legs.</summary>
    public double NearerLegs(BodyPoint point) => point switch
    {
        BodyPoint.Knee or BodyPoint.Ankle or BodyPoint.Heel or BodyPoint.Toe => settings.KneeNearerPctLeg / 100,
        BodyPoint.Shoulder or BodyPoint.Elbow => settings.ShoulderNearerPctLeg / 100,
        BodyPoint.Ear or BodyPoint.Nose or BodyPoint.Wrist => settings.HeadNearerPctLeg / 100,
        _ => 0,
    };

    /// <summary>Moves the near side's points to where they would be seen side-on, in place.</summary>
    /// <param name="turnDeg">By frame, + turned away.</param>
    /// <param name="legPx">By frame.</param>
    public void Apply(PlanePoints points, double[] legPx, ReadOnlySpan<double> turnDeg)
    {
        var hip = points.ForwardPx[(int)BodyPoint.Hip];
        foreach (var point in Enum.GetValues<BodyPoint>())
        {
            if (point is BodyPoint.Hip or BodyPoint.FarHip or BodyPoint.FarShoulder) continue;
            var forward = points.ForwardPx[(int)point];
            for (var i = 0; i < forward.Length; i++) forward[i] = hip[i] + SideOn(point, forward[i] - hip[i], legPx[i], turnDeg[i]);
        }
    }

    /// <summary>Ahead of the hip side-on, from ahead of it in the picture.</summary>
    public double SideOn(BodyPoint point, double ahead, double legPx, double turnDeg)
    {
        var (s, c) = Math.SinCos(double.DegreesToRadians(turnDeg));
        return (ahead - NearerLegs(point) * legPx * s) / c;
    }

    /// <summary>The way back.</summary>
    public double AsSeen(BodyPoint point, double ahead, double legPx, double turnDeg)
    {
        var (s, c) = Math.SinCos(double.DegreesToRadians(turnDeg));
        return ahead * c + NearerLegs(point) * legPx * s;
    }
}
