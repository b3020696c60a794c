using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Makes one box of the several that the detector lays over one body: half bodies inside whole ones, and boxes that end at the knee where
/// a fainter one goes on to the foot.
/// </summary>
public static class PersonBoxes
{
    // Shared area over the smaller box from which two boxes are one body. Two riders abreast share less than half.
    private const double InsideShare = 0.6;

    // A box speaks for another only from this share of its height on: an 18 px false person inside the rider must not stand for him.
    private const double SpeakerHeightShare = 0.4;

    // A fainter box lends its lower end when it starts at the same head, stands on the same axis and is about as slim (shares of the better
    // box): boxes that end at the knee have about 0.7 of the full height, and wide or much longer ones take the horse's legs for the rider's.
    private const double HeadApart = 0.2;
    private const double AxisApart = 0.5;
    private const double LongerMost = 1.5;
    private const double WiderMost = 1.35;
    private const double LenderScoreShare = 0.4;

    public static IReadOnlyList<Detection> Join(IReadOnlyList<Detection> seen)
    {
        ArgumentNullException.ThrowIfNull(seen);
        var kept = new List<Detection>();
        foreach (var d in seen.OrderByDescending(d => d.Score))
        {
            if (!kept.Exists(k => k.Kind == d.Kind
                && k.Box.Height > SpeakerHeightShare * d.Box.Height && Inside(k.Box, d.Box) > InsideShare))
            {
                kept.Add(d);
            }
        }

        return [.. kept.Select(k => k.Kind == DetectedKind.Person ? k with { Box = WithLegs(k, seen) } : k)];
    }

    private static BoxPx WithLegs(Detection best, IReadOnlyList<Detection> seen)
    {
        var bottom = best.Box.Bottom;
        foreach (var d in seen)
            if (Lends(best, d)) bottom = Math.Max(bottom, d.Box.Bottom);
        return best.Box with { Height = bottom - best.Box.Y };
    }

    private static bool Lends(Detection best, Detection other) =>
        other.Kind == DetectedKind.Person && other.Score >= LenderScoreShare * best.Score
        && Math.Abs(other.Box.Y - best.Box.Y) < HeadApart * best.Box.Height
        && Math.Abs(other.Box.Centre.X - best.Box.Centre.X) < AxisApart * best.Box.Width
        && other.Box.Width < WiderMost * best.Box.Width
        && other.Box.Bottom - best.Box.Y < LongerMost * best.Box.Height;

    private static double Inside(BoxPx a, BoxPx b)
    {
        var shared = Math.Max(0, Math.Min(a.Right, b.Right) - Math.Max(a.X, b.X)) * Math.Max(0, Math.Min(a.Bottom, b.Bottom) - Math.Max(a.Y, b.Y));
        return shared / Math.Min(a.Area, b.Area);
    }
}
