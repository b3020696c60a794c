using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>An angle between two marked points, signs as everywhere: thigh and shank + lower end forward, trunk + shoulder forward, foot + toe up.</summary>
public sealed record LimbAngle(string Name, BodyPoint From, BodyPoint To, LimbAngle.Zero ZeroAt)
{
    /// <summary>The direction of the limb at which its angle is zero.</summary>
    public enum Zero
    {
        Down,
        Up,
        Forward,
    }

    public static IReadOnlyList<LimbAngle> All { get; } =
    [
        new("thigh", BodyPoint.Hip, BodyPoint.Knee, Zero.Down),
        new("shank", BodyPoint.Knee, BodyPoint.Ankle, Zero.Down),
        new("foot pitch", BodyPoint.Heel, BodyPoint.Toe, Zero.Forward),
        new("trunk lean", BodyPoint.Hip, BodyPoint.Shoulder, Zero.Up),
    ];

    /// <summary>deg.</summary>
    /// <param name="from">px.</param>
    /// <param name="to">px.</param>
    /// <param name="facing">Left or right.</param>
    public double Of(PointPx from, PointPx to, Facing facing)
    {
        double forward = facing == Facing.Left ? from.X - to.X : to.X - from.X, up = from.Y - to.Y;
        return double.RadiansToDegrees(ZeroAt switch
        {
            Zero.Down => Math.Atan2(forward, -up),
            Zero.Up => Math.Atan2(forward, up),
            _ => Math.Atan2(up, forward),
        });
    }

    /// <summary>As marked, deg; null where an end is hidden.</summary>
    public double? Marked(MarkedPicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        Mark from = picture.Marks[From], to = picture.Marks[To];
        return from.Px.IsMissing || to.Px.IsMissing ? null : Of(from.Px, to.Px, picture.Facing);
    }

    /// <summary>Pipeline less marks, deg, within a half turn; null where either lacks an end.</summary>
    public double? Error(PictureReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.LeftOutReason is not null || Marked(reading.Picture) is not { } marked) return null;
        PointPx from = reading.Points[(int)From], to = reading.Points[(int)To];
        return from.IsMissing || to.IsMissing ? null : Math.IEEERemainder(Of(from, to, reading.Facing) - marked, 360);
    }
}
