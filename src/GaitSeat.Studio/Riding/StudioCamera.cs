using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>How the camera is set at one instant.</summary>
/// <param name="PanRad">Turn about the vertical, + to the right.</param>
/// <param name="FocalPx">Focal length, px.</param>
/// <param name="CentreXPx">Principal point.</param>
/// <param name="CentreYPx">Principal point; the lens is shifted, not tilted, so upright things stay upright.</param>
internal readonly record struct CameraState(double PanRad, double FocalPx, double CentreXPx, double CentreYPx);

/// <summary>A pinhole camera at the origin of the stage, at eye height.</summary>
internal sealed class StudioCamera
{
    /// <summary>Lens height over the ground, m.</summary>
    public const double HeightM = 1.55;

    /// <summary>Hand-held pan: how far it strays from the horse, rad (about 0.4 deg), and up and down, share of picture height.</summary>
    private const double PanStrayRad = 0.007;
    private const double TiltStrayShare = 0.004;

    /// <summary>The pan follows the horse this much late, s.</summary>
    private const double LagSeconds = 0.12;

    private readonly Ride _ride;
    private readonly Stage _stage;
    private readonly double _focalPx;
    private readonly double _centreYPx;
    private readonly double[] _stray;

    public StudioCamera(Ride ride, Stage stage)
    {
        (_ride, _stage) = (ride, stage);
        var script = ride.Script;
        var middle = ride.At(script.DurationSeconds / 2);
        var pose = middle.Pose;
        var riderM = pose.HelmetTop.Up - Math.Min(pose.Heel.Up, Math.Min(pose.Toe.Up, pose.Tread.Up));
        // At the middle of the clip the zoom has run half its course.
        _focalPx = script.RiderHeightPx / riderM * script.CameraDistanceM / (1 + script.ZoomChange / 2);
        // Horse and rider are 2.45 m tall together; their middle goes a little below the middle of the picture.
        const double MiddleOfPairM = 1.22;
        var pxPerM = script.RiderHeightPx / riderM;
        _centreYPx = 0.52 * script.HeightPx - pxPerM * (HeightM - MiddleOfPairM);
        var noise = new SeededNoise(script.Seed, stream: 3);
        _stray = [.. Enumerable.Range(0, 8).Select(_ => noise.Uniform())];
    }

    public CameraState At(double seconds)
    {
        var script = _ride.Script;
        var focal = _focalPx * (1 + script.ZoomChange * seconds / script.DurationSeconds);
        if (script.Camera == CameraWork.Static) return new(0, focal, script.WidthPx / 2.0, _centreYPx);
        var standing = _stage.At(_ride.At(seconds - LagSeconds) with { Trunk = default });
        var pan = Math.Atan2(standing.X, standing.Depth) + PanStrayRad * Wobble(seconds, 0);
        return new(pan, focal, script.WidthPx / 2.0, _centreYPx + TiltStrayShare * script.HeightPx * Wobble(seconds, 4));
    }

    /// <summary>A point given in the rider's frame at its place in the picture, and the picture scale there, px per m.</summary>
    public static (PointPx Px, double PxPerM) Project(CameraState camera, Standing standing, Point3 point)
    {
        var x = standing.X + point.Forward * standing.ForwardX + point.Near * standing.NearX;
        var depth = standing.Depth + point.Forward * standing.ForwardDepth + point.Near * standing.NearDepth;
        var (sin, cos) = Math.SinCos(camera.PanRad);
        var across = x * cos - depth * sin;
        var away = x * sin + depth * cos;
        var scale = camera.FocalPx / away;
        return (new PointPx(camera.CentreXPx + across * scale, camera.CentreYPx - (point.Up - HeightM) * scale), scale);
    }

    // Three slow waves of seeded phase: smooth, and the same on every machine.
    private double Wobble(double seconds, int from) =>
        0.5 * Math.Sin(2 * Math.PI * (0.37 * seconds + _stray[from]))
        + 0.3 * Math.Sin(2 * Math.PI * (0.83 * seconds + _stray[from + 1]))
        + 0.2 * Math.Sin(2 * Math.PI * (1.57 * seconds + _stray[from + 2]));
}
