using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Joins the two models' near-side points into one track a point. Where both see it: second + motion share x (first - second) + what the place
/// share asks beyond that x the rolling median of (first - second). A frame in which the first model strays from its usual offset
/// loses its say in the motion.
/// </summary>
public static class PointBlend
{
    public static PointTrack[] Blend(double[] timeSeconds, NearSide?[] sides, bool[] cutBefore, BodyPointSettings settings)
    {
        ArgumentNullException.ThrowIfNull(timeSeconds);
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(settings);
        var tracks = Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(sides.Length)).ToArray();
        foreach (var range in Stretches.Of(Array.ConvertAll(sides, s => s is not null), cutBefore))
        {
            var (start, length) = range.GetOffsetAndLength(sides.Length);
            foreach (var point in Enum.GetValues<BodyPoint>())
                BlendStretch(tracks[(int)point], start, timeSeconds.AsSpan(start, length), sides.AsSpan(start, length), point, settings);
        }

        return tracks;
    }

    private static void BlendStretch(
        PointTrack track, int start, ReadOnlySpan<double> time, ReadOnlySpan<NearSide?> sides, BodyPoint point, BodyPointSettings settings)
    {
        var p = (int)point;
        double[] dx = new double[sides.Length], dy = new double[sides.Length];
        for (var i = 0; i < sides.Length; i++)
        {
            PointPx a = sides[i]!.First.Near[p], b = sides[i]!.Second.Near[p];
            (dx[i], dy[i]) = (a.X - b.X, a.Y - b.Y);
        }

        double[] usualX = Stretches.RollingMedian(time, dx, settings.VoteWindowSeconds), usualY = Stretches.RollingMedian(time, dy, settings.VoteWindowSeconds);
        var share = ShareOf(point, settings);
        for (var i = 0; i < sides.Length; i++)
        {
            var side = sides[i]!;
            if (double.IsNaN(dx[i]))
            {
                PutOnly(track, start + i, side, p);
                continue;
            }

            var limit = settings.DisagreementMaximum * side.RiderHeightPx;
            double stray = Trust(Length(dx[i] - usualX[i], dy[i] - usualY[i]), limit), usual = Trust(Length(usualX[i], usualY[i]), limit);
            double motion = share.Motion * stray * usual, place = share.Place * usual - motion;
            track.XPx[start + i] = side.Second.Near[p].X + motion * dx[i] + place * usualX[i];
            track.YPx[start + i] = side.Second.Near[p].Y + motion * dy[i] + place * usualY[i];
            track.SpreadPx[start + i] = Length(dx[i], dy[i]);
            track.Confidence[start + i] = Math.Max(side.First.NearScore[p], side.Second.NearScore[p]) * Trust(track.SpreadPx[start + i], limit);
        }
    }

    private static void PutOnly(PointTrack track, int frame, NearSide side, int p)
    {
        var first = side.Second.Near[p].IsMissing;
        var at = first ? side.First.Near[p] : side.Second.Near[p];
        if (at.IsMissing) return;
        (track.XPx[frame], track.YPx[frame]) = (at.X, at.Y);
        track.Confidence[frame] = first ? side.First.NearScore[p] : side.Second.NearScore[p];
    }

    private static double Length(double x, double y) => Math.Sqrt(x * x + y * y);

    // 1 for no disagreement, one half at the limit.
    private static double Trust(double apart, double limit) => Math.Exp(-Math.Log(2) * apart * apart / (limit * limit));

    private static PointShare ShareOf(BodyPoint point, BodyPointSettings settings) => point switch
    {
        BodyPoint.Hip or BodyPoint.FarHip => settings.Hip,
        BodyPoint.Knee => settings.Knee,
        BodyPoint.Ankle => settings.Ankle,
        _ => settings.Upper,
    };
}
