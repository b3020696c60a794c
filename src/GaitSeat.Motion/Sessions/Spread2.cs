namespace GaitSeat.Motion.Sessions;

/// <summary>A symmetric 2 x 2 matrix: the covariance of thigh angle and stirrup length index.</summary>
internal readonly record struct Spread2(double A, double B, double Between)
{
    public static Spread2 Of(double sdA, double sdB, double correlation) => new(sdA * sdA, sdB * sdB, correlation * sdA * sdB);

    /// <summary>Half the square of a difference: what two draws with this covariance show on average.</summary>
    public static Spread2 OfPair(double a, double b) => new(a * a / 2, b * b / 2, a * b / 2);

    public static Spread2 operator +(Spread2 x, Spread2 y) => new(x.A + y.A, x.B + y.B, x.Between + y.Between);

    public static Spread2 operator -(Spread2 x, Spread2 y) => new(x.A - y.A, x.B - y.B, x.Between - y.Between);

    public static Spread2 operator *(double f, Spread2 x) => new(f * x.A, f * x.B, f * x.Between);

    /// <summary>Squared distance of (a, b) from nothing, in units of this covariance (Mahalanobis).</summary>
    public double Distance(double a, double b) => (B * a * a - 2 * Between * a * b + A * b * b) / (A * B - Between * Between);

    /// <summary>Two independent standard normal numbers made to have this covariance (Cholesky).</summary>
    public (double A, double B) Shape(double x, double y)
    {
        if (A <= 0) return (0, Math.Sqrt(Math.Max(0, B)) * y);
        var root = Math.Sqrt(A);
        var slope = Between / root;
        return (root * x, slope * x + Math.Sqrt(Math.Max(0, B - slope * slope)) * y);
    }
}
