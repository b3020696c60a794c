namespace GaitSeat.Model;

/// <summary>A position in the upright, display-corrected picture: x right, y down, pixel (0,0) covers 0..1. Pixels.</summary>
public readonly record struct PointPx(double X, double Y)
{
    public static PointPx Missing => new(double.NaN, double.NaN);

    public bool IsMissing => double.IsNaN(X) || double.IsNaN(Y);

    public double DistanceTo(PointPx other) => Math.Sqrt((X - other.X) * (X - other.X) + (Y - other.Y) * (Y - other.Y));
}

/// <summary>An upright box in the picture. Pixels; the right and bottom edges are exclusive.</summary>
public readonly record struct BoxPx(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;

    public double Bottom => Y + Height;

    public PointPx Centre => new(X + Width / 2, Y + Height / 2);

    public double Area => Width * Height;

    public bool Contains(PointPx p) => p.X >= X && p.X < Right && p.Y >= Y && p.Y < Bottom;

    public BoxPx Scaled(double factor) =>
        new(X + Width * (1 - factor) / 2, Y + Height * (1 - factor) / 2, Width * factor, Height * factor);

    /// <summary>Shared area over joint area, 0..1.</summary>
    public double Overlap(BoxPx other)
    {
        var shared = Math.Max(0, Math.Min(Right, other.Right) - Math.Max(X, other.X))
            * Math.Max(0, Math.Min(Bottom, other.Bottom) - Math.Max(Y, other.Y));
        return shared <= 0 ? 0 : shared / (Area + other.Area - shared);
    }
}
