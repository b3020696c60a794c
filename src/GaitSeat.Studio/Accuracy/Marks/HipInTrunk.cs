using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>A hip's error turned into the trunk as marked, percent of rider height.</summary>
/// <param name="AlongPct">+ towards the shoulder.</param>
/// <param name="AcrossPct">+ forward of the line from hip to shoulder.</param>
/// <param name="LeanDeg">How far the marked trunk leans, + forward.</param>
public readonly record struct HipInTrunk(double AlongPct, double AcrossPct, double LeanDeg)
{
    /// <summary>From this lean on a rider is counted as leaning (jump and racing seats), deg.</summary>
    public const double LeaningFromDeg = 15;

    /// <summary>Null where the shoulder is not marked.</summary>
    /// <param name="hip">The error of a hip.</param>
    public static HipInTrunk? Of(PointError hip)
    {
        ArgumentNullException.ThrowIfNull(hip);
        if (hip.Point != BodyPoint.Hip) throw new ArgumentException($"The error of a hip is needed, not of the {hip.Point.ToTerm()}.", nameof(hip));
        var shoulder = hip.Picture.Marks[BodyPoint.Shoulder].Px;
        if (shoulder.IsMissing) return null;
        var trunk = hip.Picture.Offset(hip.Mark.Px, shoulder);
        double forward = trunk.ForwardPct / trunk.LengthPct, up = trunk.UpPct / trunk.LengthPct;
        return new(
            hip.Offset.ForwardPct * forward + hip.Offset.UpPct * up,
            hip.Offset.ForwardPct * up - hip.Offset.UpPct * forward,
            double.RadiansToDegrees(Math.Atan2(forward, up)));
    }
}
