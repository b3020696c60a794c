using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Names why a frame is not measured.</summary>
public static class FrameReasons
{
    private static readonly BodyPoint[] Needed = [BodyPoint.Shoulder, BodyPoint.Hip, BodyPoint.Knee, BodyPoint.Ankle];

    public static FrameReason[] Of(
        BoxPx?[] rider, PointTrack[] points, Facing[] facing, int widthPx, int heightPx, BodyPointSettings settings)
    {
        ArgumentNullException.ThrowIfNull(rider);
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(facing);
        ArgumentNullException.ThrowIfNull(settings);
        var picture = new BoxPx(0, 0, widthPx, heightPx);
        var reasons = new FrameReason[rider.Length];
        for (var i = 0; i < reasons.Length; i++) reasons[i] = One(i);
        return reasons;

        FrameReason One(int i)
        {
            if (rider[i] is not { } box || points[(int)BodyPoint.Hip][i].IsMissing) return FrameReason.NoRider;
            if (box.Height < settings.RiderHeightMinimumPx) return FrameReason.RiderTooSmall;
            if (!Needed.All(p => picture.Contains(points[(int)p][i])) || CutOff(i, box.Height)) return FrameReason.OutOfPicture;
            var uncertain = facing[i] == Facing.Unknown || Needed.Any(p => points[(int)p].Confidence[i] < settings.ConfidenceMinimum);
            return uncertain ? FrameReason.PointsUncertain : FrameReason.None;
        }

        // A rider who is half in the picture has all her points in it: the models make up what they cannot see, and are less sure of it.
        bool CutOff(int i, double riderHeightPx) => Needed.Any(p =>
        {
            var x = points[(int)p].XPx[i];
            return Math.Min(x, widthPx - x) < settings.EdgeZoneHeights * riderHeightPx && points[(int)p].Confidence[i] < settings.EdgeConfidenceMinimum;
        });
    }
}
