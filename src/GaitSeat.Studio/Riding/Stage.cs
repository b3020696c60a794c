using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Where the horse is on the ground and how it is turned, seen from the camera at the origin (x right at pan 0, depth away), m.</summary>
/// <param name="NearX">Across the horse, towards the side that faces the camera.</param>
internal readonly record struct Standing(double X, double Depth, double ForwardX, double ForwardDepth, double NearX, double NearDepth)
{
    /// <summary>Angle between the line of sight and the line across the horse, deg: 0 is exactly side-on; + the horse comes towards the camera.</summary>
    public double YawDeg => -Math.Asin(Math.Clamp((ForwardX * X + ForwardDepth * Depth) / DistanceM, -1, 1)) * 180 / Math.PI;

    public double DistanceM => Math.Sqrt(X * X + Depth * Depth);

    /// <summary>Where in the picture the horse goes.</summary>
    public Facing Facing => ForwardX * Depth - ForwardDepth * X >= 0 ? Facing.Right : Facing.Left;

    /// <summary>From a place and the direction of going; the near side is the one that faces the camera.</summary>
    public static Standing At(double x, double depth, double forwardX, double forwardDepth)
    {
        var (nearX, nearDepth) = (forwardDepth, -forwardX);
        return nearX * x + nearDepth * depth <= 0
            ? new(x, depth, forwardX, forwardDepth, nearX, nearDepth)
            : new(x, depth, forwardX, forwardDepth, -nearX, -nearDepth);
    }
}

/// <summary>The way the horse takes past or around the camera.</summary>
internal sealed class Stage
{
    private readonly ClipScript _script;
    private readonly int _direction;
    private readonly double _yaw;
    private readonly double _distance;

    public Stage(Ride ride)
    {
        _script = ride.Script;
        _direction = _script.Facing == Facing.Right ? 1 : -1;
        _yaw = _script.YawDeg * Math.PI / 180;
        _distance = _script.CameraDistanceM;
    }

    public Standing At(RideMoment moment)
    {
        var way = moment.WayM + moment.Trunk.SurgeM;
        return _script.Way switch
        {
            Way.Line => OnLine(way),
            Way.ConstantYaw => AtConstantYaw(way),
            Way.CircleFromInside => OnCircleFromInside(way),
            Way.CircleFromOutside => OnCircleFromOutside(way),
            _ => _script.Camera == CameraWork.Static ? OnLine(way) : OnCircle(way),
        };
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

    // Logarithmic spiral: the line of sight is always cut at the same angle.
    private Standing AtConstantYaw(double way)
    {
        const double NearestM = 2.5;
        var (sinYaw, cosYaw) = Math.SinCos(_yaw);
        var distance = _distance - way * sinYaw;
        if (distance < NearestM) throw new ArgumentException(FormattableString.Invariant($"At a yaw of {_script.YawDeg} deg the horse comes as near as {distance:F1} m ({NearestM} m is the least): raise camera_distance_m or shorten the clip."));
        var angle = Math.Abs(sinYaw) < 1e-6 ? way / _distance : -Math.Log(distance / _distance) * cosYaw / sinYaw;
        var (sin, cos) = Math.SinCos(_direction * angle);
        var (fx, fd) = (_direction * cosYaw * cos - sinYaw * sin, -_direction * cosYaw * sin - sinYaw * cos);
        return Standing.At(distance * sin, distance * cos, fx, fd);
    }

    // Nobody stands exactly in the middle: a tenth of the radius aside, turned with the picture plane by the yaw asked for.
    private Standing OnCircleFromInside(double way)
    {
        const double AsideShare = 0.1;
        var radius = Radius;
        var (asideX, asideDepth) = Math.SinCos(_yaw);
        return OnCircleAbout(-AsideShare * radius * asideX, -AsideShare * radius * asideDepth, radius, way / radius, turn: _direction);
    }

    // At angle 0 the horse is nearest to the camera and goes the way the script says; beyond the middle it goes the other way.
    private Standing OnCircleFromOutside(double way) => OnCircleAbout(0, _distance, -Radius, way / Radius + _script.CircleStartDeg * Math.PI / 180, turn: -_direction);

    private double Radius => _script.CircleDiameterM / 2;

    private static Standing OnCircleAbout(double centreX, double centreDepth, double radius, double angle, int turn)
    {
        var (sin, cos) = Math.SinCos(turn * angle);
        var going = turn * Math.Sign(radius);
        return Standing.At(centreX + radius * sin, centreDepth + radius * cos, going * cos, -going * sin);
    }
}
