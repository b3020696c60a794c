using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Where the horse is on the ground and how it is turned, seen from the camera at the origin (x right at pan 0, depth away), m.</summary>
internal readonly record struct Standing(double X, double Depth, double ForwardX, double ForwardDepth, double NearX, double NearDepth)
{
    /// <summary>Angle between the line of sight and the line across the horse, deg: 0 is exactly side-on; + the horse comes towards the camera.</summary>
    public double YawDeg
    {
        get
        {
            var distance = Math.Sqrt(X * X + Depth * Depth);
            return -Math.Asin((ForwardX * X + ForwardDepth * Depth) / distance) * 180 / Math.PI;
        }
    }
}

/// <summary>The way the horse takes: a line past a standing camera, or a circle around a turning one.</summary>
internal sealed class Stage
{
    private readonly Ride _ride;
    private readonly int _direction;
    private readonly double _yaw;
    private readonly double _distance;

    public Stage(Ride ride)
    {
        _ride = ride;
        _direction = ride.Script.Facing == Facing.Right ? 1 : -1;
        _yaw = ride.Script.YawDeg * Math.PI / 180;
        _distance = ride.Script.CameraDistanceM;
    }

    public Standing At(RideMoment moment)
    {
        var way = _ride.SpeedMS * (moment.Seconds - _ride.Script.DurationSeconds / 2) + moment.Trunk.SurgeM;
        return _ride.Script.Camera == CameraWork.Static ? OnLine(way) : OnCircle(way);
    }

    private Standing OnLine(double way)
    {
        var (sin, cos) = Math.SinCos(_yaw);
        var (fx, fd) = (_direction * cos, -sin);
        return new(fx * way, _distance + fd * way, fx, fd, -_direction * -fd, -_direction * fx);
    }

    // The camera stands beside the centre by as much as gives the wanted turn in the middle of the clip.
    private Standing OnCircle(double way)
    {
        var radius = _distance * Math.Cos(_yaw);
        var centreX = -_direction * _distance * Math.Sin(_yaw);
        var angle = _direction * way / radius;
        var (sin, cos) = Math.SinCos(angle);
        return new(centreX + radius * sin, radius * cos, _direction * cos, -_direction * sin, -sin, -cos);
    }
}
