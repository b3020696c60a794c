using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>
/// A segment's length over the shank's, in the picture. A check that leans on neither marks nor pipeline: a hip that stands too high makes the trunk
/// too short. Published lengths lie in the picture plane; a rider's thigh opens to the side and shows shorter, a bent back shortens the trunk.
/// </summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other end.</param>
/// <param name="Published">The ratio of the published shares of stature.</param>
public sealed record SegmentRatio(string Name, BodyPoint From, BodyPoint To, double Published)
{
    // Shares of stature by Drillis & Contini (1966): shoulder 0.818 and hip 0.530 above ground, thigh 0.245, shank 0.246, foot 0.152 (bare).
    public static IReadOnlyList<SegmentRatio> All { get; } =
    [
        new("shoulder to hip", BodyPoint.Shoulder, BodyPoint.Hip, (0.818 - 0.530) / 0.246),
        new("thigh", BodyPoint.Hip, BodyPoint.Knee, 0.245 / 0.246),
        new("heel to toe", BodyPoint.Heel, BodyPoint.Toe, 0.152 / 0.246),
    ];

    /// <summary>The ratio as marked and as read in one picture; null where either lacks a point.</summary>
    public (double Marked, double Read)? Of(PictureReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.LeftOutReason is not null) return null;
        double marked = Of(p => reading.Picture.Marks[p].Px), read = Of(p => reading.Points[(int)p]);
        return double.IsNaN(marked + read) ? null : (marked, read);
    }

    private double Of(Func<BodyPoint, PointPx> at) => at(From).DistanceTo(at(To)) / at(BodyPoint.Knee).DistanceTo(at(BodyPoint.Ankle));
}
