using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>Cuts a clip into continuous segments and counts what falls outside.</summary>
internal static class Segmenter
{
    public static List<Segment> Cut(Sightings sightings, FrameReason[] verdict, Facing[] facing, SegmentSettings settings, List<LeftOut> leftOut)
    {
        var kept = new List<Segment>();
        var longest = settings.MaxHoleSeconds + 1.5 * Finite(EvenGrid.MedianStep(sightings.TimeSeconds));
        var first = -1;
        var last = -1;
        var startsAtGap = false;
        var strays = 0;
        for (var i = 0; i <= sightings.Count; i++)
        {
            var ends = i == sightings.Count;
            if (!ends && (!FrameVerdict.IsFollowed(verdict[i]) || facing[i] == Facing.Unknown)) continue;
            if (first >= 0 && (ends || Breaks(sightings, facing, last, i, longest)))
            {
                var segment = new Segment(first, last + 1, facing[first], startsAtGap, last + 1 < sightings.Count);
                if (sightings.TimeSeconds[last] - sightings.TimeSeconds[first] >= settings.MinSegmentSeconds) kept.Add(segment);
                else strays += Followed(verdict, segment);
                first = -1;
            }

            if (ends) break;
            if (first < 0)
            {
                first = i;
                startsAtGap = i > 0;
            }

            last = i;
        }

        Count(verdict, facing, strays, settings, leftOut);
        return kept;
    }

    private static bool Breaks(Sightings sightings, Facing[] facing, int last, int next, double longest)
    {
        if (facing[next] != facing[last]) return true;
        if (sightings.TimeSeconds[next] - sightings.TimeSeconds[last] > longest) return true;
        for (var k = last + 1; k <= next; k++)
            if (sightings.CutBefore[k]) return true;
        return false;
    }

    private static int Followed(FrameReason[] verdict, Segment segment)
    {
        var count = 0;
        for (var i = segment.First; i < segment.EndExcl; i++)
            if (FrameVerdict.IsFollowed(verdict[i])) count++;
        return count;
    }

    private static void Count(FrameReason[] verdict, Facing[] facing, int strays, SegmentSettings settings, List<LeftOut> leftOut)
    {
        foreach (var group in verdict.Where(r => r != FrameReason.None).GroupBy(r => r).OrderBy(g => g.Key))
            leftOut.Add(new(LeftOutScope.Frame, Term(group.Key), group.Count(), Detail(group.Key, settings)));
        var unknown = 0;
        for (var i = 0; i < verdict.Length; i++)
            if (FrameVerdict.IsFollowed(verdict[i]) && facing[i] == Facing.Unknown) unknown++;
        if (unknown > 0) leftOut.Add(new(LeftOutScope.Frame, "facing_unknown", unknown, "The travel direction could not be told, so forward has no meaning."));
        if (strays > 0)
            leftOut.Add(new(LeftOutScope.Frame, "stretch_too_short", strays, $"The rider was followed without a break for less than {settings.MinSegmentSeconds} s."));
    }

    private static string Term(FrameReason reason) => reason switch
    {
        FrameReason.NoHorse => "no_horse",
        FrameReason.NoRider => "no_rider",
        FrameReason.RiderTooSmall => "rider_too_small",
        FrameReason.OutOfPicture => "out_of_picture",
        FrameReason.PointsUncertain => "points_uncertain",
        FrameReason.TurnedOut => "turned_out",
        FrameReason.TrunkLost => "trunk_lost",
        _ => "none",
    };

    private static string Detail(FrameReason reason, SegmentSettings settings) => reason switch
    {
        FrameReason.NoHorse => "No horse was found.",
        FrameReason.NoRider => "No rider was found.",
        FrameReason.RiderTooSmall => "The rider was too small in the picture.",
        FrameReason.OutOfPicture => "The rider was partly out of the picture.",
        FrameReason.PointsUncertain => "The body points were too uncertain.",
        FrameReason.TurnedOut => $"The rider was turned out of the picture plane by more than {settings.MaxViewYawDeg} deg.",
        FrameReason.TrunkLost => "The patch under the saddle was lost; these frames are measured over the stirrup only.",
        _ => "",
    };

    private static double Finite(double value) => double.IsFinite(value) ? value : 0;
}
