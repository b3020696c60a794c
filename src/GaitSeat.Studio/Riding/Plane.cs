namespace GaitSeat.Studio;

/// <summary>A place in the rider's sagittal plane, m: forward, up.</summary>
internal readonly record struct PlanePoint(double Forward, double Up)
{
    public static PlanePoint operator +(PlanePoint a, PlanePoint b) => new(a.Forward + b.Forward, a.Up + b.Up);

    public static PlanePoint operator -(PlanePoint a, PlanePoint b) => new(a.Forward - b.Forward, a.Up - b.Up);

    public double Length => Math.Sqrt(Forward * Forward + Up * Up);

    /// <summary>Turned by an angle, nose up positive, deg.</summary>
    public PlanePoint Turned(double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(Forward * cos - Up * sin, Forward * sin + Up * cos);
    }

    public PlanePoint Scaled(double factor) => new(Forward * factor, Up * factor);

    public Point3 At(double near) => new(Forward, Up, near);
}

/// <summary>Angles and two-link limbs in the rider's plane; the definitions of the vocabulary.</summary>
internal static class Plane
{
    private const double DegreesPerRadian = 180 / Math.PI;

    /// <summary>From <paramref name="upper"/> to <paramref name="lower"/> against straight down, + lower end forward, deg.</summary>
    public static double FromDown(PlanePoint upper, PlanePoint lower) =>
        Math.Atan2(lower.Forward - upper.Forward, upper.Up - lower.Up) * DegreesPerRadian;

    /// <summary>From <paramref name="lower"/> to <paramref name="upper"/> against straight up, + upper end forward, deg.</summary>
    public static double FromUp(PlanePoint lower, PlanePoint upper) =>
        Math.Atan2(upper.Forward - lower.Forward, upper.Up - lower.Up) * DegreesPerRadian;

    /// <summary>A link of given length hung at an angle from straight down.</summary>
    public static PlanePoint Hung(double length, double degreesFromDown)
    {
        var (sin, cos) = Math.SinCos(degreesFromDown / DegreesPerRadian);
        return new(length * sin, -length * cos);
    }

    /// <summary>Interior angle at the middle point, deg; 180 is straight.</summary>
    public static double Interior(PlanePoint a, PlanePoint middle, PlanePoint b)
    {
        var (u, v) = (a - middle, b - middle);
        return Math.Acos(Math.Clamp((u.Forward * v.Forward + u.Up * v.Up) / (u.Length * v.Length), -1, 1)) * DegreesPerRadian;
    }

    /// <summary>
    /// The middle joint of two links from <paramref name="root"/> to <paramref name="end"/>; <paramref name="side"/> +1 bends it forward (knee), -1 back (elbow).
    /// </summary>
    /// <exception cref="ArgumentException">The end is out of reach.</exception>
    public static PlanePoint MiddleJoint(PlanePoint root, PlanePoint end, double first, double second, int side)
    {
        var reach = end - root;
        var distance = reach.Length;
        if (distance > first + second || distance < Math.Abs(first - second))
            throw new ArgumentException($"A limb of {first:F3} + {second:F3} m cannot span {distance:F3} m.");
        var along = (first * first - second * second + distance * distance) / (2 * distance);
        var off = Math.Sqrt(Math.Max(0, first * first - along * along)) * side;
        var (df, du) = (reach.Forward / distance, reach.Up / distance);
        // Perpendicular that points forward when the limb hangs down.
        return new(root.Forward + along * df - off * du, root.Up + along * du + off * df);
    }
}
