namespace GaitSeat.Studio;

/// <summary>A camera's turn about its axis, worked out once for many points.</summary>
internal readonly struct Tilt
{
    private readonly bool _isLevel;
    private readonly double _sin;
    private readonly double _cos;
    private readonly double _x;
    private readonly double _y;

    public Tilt(CameraState camera)
    {
        (_isLevel, _x, _y) = (camera.RollRad == 0, camera.TurnXPx, camera.TurnYPx);
        (_sin, _cos) = Math.SinCos(camera.RollRad);
    }

    /// <summary>Into the picture as it is, from the picture of a camera that stands upright.</summary>
    public (double X, double Y) Rolled(double x, double y)
    {
        if (_isLevel) return (x, y);
        var (dx, dy) = (x - _x, y - _y);
        return (_x + _cos * dx - _sin * dy, _y + _sin * dx + _cos * dy);
    }

    /// <summary>The way back.</summary>
    public (double X, double Y) Upright(double x, double y)
    {
        if (_isLevel) return (x, y);
        var (dx, dy) = (x - _x, y - _y);
        return (_x + _cos * dx + _sin * dy, _y - _sin * dx + _cos * dy);
    }
}
