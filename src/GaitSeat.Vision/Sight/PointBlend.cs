using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Joins the two models' near-side points into one track a point.</summary>
public static class PointBlend
{
    public static PointTrack[] Blend(NearSide?[] sides, BodyPointSettings settings)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(settings);
        var tracks = Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(sides.Length)).ToArray();
        for (var i = 0; i < sides.Length; i++)
        {
            if (sides[i] is not { } side) continue;
            foreach (var point in Enum.GetValues<BodyPoint>()) Put(tracks[(int)point], i, side, point, settings);
        }

        return tracks;
    }

    private static void Put(PointTrack track, int frame, NearSide side, BodyPoint point, BodyPointSettings settings)
    {
        var p = (int)point;
        PointPx a = side.First[p], b = side.Second[p];
        double scoreA = side.FirstScore[p], scoreB = side.SecondScore[p];
        if (a.IsMissing && b.IsMissing) return;
        if (a.IsMissing || b.IsMissing)
        {
            (track.XPx[frame], track.YPx[frame]) = a.IsMissing ? (b.X, b.Y) : (a.X, a.Y);
            track.Confidence[frame] = a.IsMissing ? scoreB : scoreA;
            return;
        }

        var share = FirstShare(point, settings);
        track.XPx[frame] = b.X + share * (a.X - b.X);
        track.YPx[frame] = b.Y + share * (a.Y - b.Y);
        track.SpreadPx[frame] = a.DistanceTo(b);
        var apart = track.SpreadPx[frame] / (settings.DisagreementMaximum * side.RiderHeightPx);
        track.Confidence[frame] = Math.Max(scoreA, scoreB) * Math.Exp(-Math.Log(2) * apart * apart);
    }

    /// <summary>Share of the first model in a point both have.</summary>
    public static double FirstShare(BodyPoint point, BodyPointSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return point switch
        {
            BodyPoint.Hip or BodyPoint.FarHip => settings.FirstShareHip,
            BodyPoint.Knee => settings.FirstShareKnee,
            BodyPoint.Ankle => settings.FirstShareAnkle,
            _ => settings.FirstShareUpper,
        };
    }
}
