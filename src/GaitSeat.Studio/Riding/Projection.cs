using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>The way from the rider's frame into the picture at one instant; what holds for all points is worked out once.</summary>
internal readonly struct Projection(CameraState camera, Standing standing)
{
    private readonly (double Sin, double Cos) _pan = Math.SinCos(camera.PanRad);
    private readonly Tilt _tilt = new(camera);

    /// <summary>A point given in the rider's frame at its place in the picture, and the picture scale there, px per m.</summary>
    public (PointPx Px, double PxPerM) Of(Point3 point)
    {
        var x = standing.X + point.Forward * standing.ForwardX + point.Near * standing.NearX;
        var depth = standing.Depth + point.Forward * standing.ForwardDepth + point.Near * standing.NearDepth;
        var across = x * _pan.Cos - depth * _pan.Sin - camera.Shift.Forward;
        var away = x * _pan.Sin + depth * _pan.Cos - camera.Shift.Near;
        var scale = camera.FocalPx / away;
        var (px, py) = _tilt.Rolled(camera.CentreXPx + across * scale, camera.CentreYPx - (point.Up - StudioCamera.HeightM - camera.Shift.Up) * scale);
        return (new PointPx(px, py), scale);
    }
}
