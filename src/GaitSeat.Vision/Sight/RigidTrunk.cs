using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Holds the trunk to its usual length: the hip is moved along the line from the shoulder. Body-point models see the shoulder move up and down as
/// it does (gain 0.95 to 1.05, correlation 0.97 to 1.00 on rendered clips) but the hip, half hidden in clothes and saddle, by 0.5 to 1.6 of what it
/// does, different from clip to clip; with the trunk held the hip's gain is 0.87 to 1.03.
/// </summary>
public static class RigidTrunk
{
    /// <summary>Moves the hip in place, by <see cref="BodyPointSettings.TrunkStiffness"/> of the way to the usual length.</summary>
    public static void Hold(double[] timeSeconds, PointTrack[] points, bool[] cutBefore, BodyPointSettings settings)
    {
        ArgumentNullException.ThrowIfNull(timeSeconds);
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(settings);
        PointTrack shoulder = points[(int)BodyPoint.Shoulder], hip = points[(int)BodyPoint.Hip];
        var length = timeSeconds.Select((_, i) => shoulder[i].DistanceTo(hip[i])).ToArray();
        foreach (var range in Stretches.Of(Array.ConvertAll(length, l => !double.IsNaN(l)), cutBefore))
        {
            var usual = Stretches.RollingMedian(timeSeconds.AsSpan(range), length.AsSpan(range), settings.VoteWindowSeconds);
            var start = range.Start.Value;
            for (var i = 0; i < usual.Length; i++) Move(shoulder, hip, start + i, usual[i], settings.TrunkStiffness);
        }
    }

    private static void Move(PointTrack shoulder, PointTrack hip, int frame, double usual, double stiffness)
    {
        PointPx s = shoulder[frame], h = hip[frame];
        var length = s.DistanceTo(h);
        if (length < 1) return;
        var factor = 1 + stiffness * (usual / length - 1);
        hip.XPx[frame] = s.X + factor * (h.X - s.X);
        hip.YPx[frame] = s.Y + factor * (h.Y - s.Y);
    }
}
