using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Holds heel and toe to their usual place about the ankle. The ankle's track is steady (drift swing read from it 0.3 to 0.6 cm off on five
/// rendered clips, 0.8 to 2.0 on three drawn ones); the toe jumps between boot, stirrup and girth (1 to 2 and 3 to 6 cm off), while a foot in the stirrup
/// turns by a few degrees only within a stride.
/// </summary>
public static class SteadyFoot
{
    private static readonly BodyPoint[] Foot = [BodyPoint.Heel, BodyPoint.Toe];

    /// <summary>Moves heel and toe in place, by <see cref="BodyPointSettings.FootStiffness"/> of the way to the usual offset from the ankle.</summary>
    public static void Hold(double[] timeSeconds, PointTrack[] points, bool[] cutBefore, BodyPointSettings settings)
    {
        ArgumentNullException.ThrowIfNull(timeSeconds);
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(settings);
        var ankle = points[(int)BodyPoint.Ankle];
        foreach (var end in Foot.Select(p => points[(int)p]))
        {
            foreach (var range in Stretches.Of(timeSeconds.Select((_, i) => !ankle[i].IsMissing && !end[i].IsMissing).ToArray(), cutBefore))
            {
                HoldAxis(timeSeconds.AsSpan(range), end.XPx.AsSpan(range), ankle.XPx.AsSpan(range), settings);
                HoldAxis(timeSeconds.AsSpan(range), end.YPx.AsSpan(range), ankle.YPx.AsSpan(range), settings);
            }
        }
    }

    private static void HoldAxis(ReadOnlySpan<double> time, Span<double> end, ReadOnlySpan<double> ankle, BodyPointSettings settings)
    {
        var offset = new double[end.Length];
        for (var i = 0; i < offset.Length; i++) offset[i] = end[i] - ankle[i];
        var usual = Stretches.RollingMedian(time, offset, settings.VoteWindowSeconds);
        for (var i = 0; i < offset.Length; i++) end[i] = ankle[i] + offset[i] + settings.FootStiffness * (usual[i] - offset[i]);
    }
}
