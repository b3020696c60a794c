using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Joins the persons of a clip's looks into tracks, nearest first.</summary>
public static class PersonTracker
{
    public static IReadOnlyList<PersonTrack> Follow(IReadOnlyList<Look> looks, double pictureHeightPx, ScoutSettings settings)
    {
        ArgumentNullException.ThrowIfNull(looks);
        ArgumentNullException.ThrowIfNull(settings);
        var tracks = new List<PersonTrack>();
        for (var i = 0; i < looks.Count; i++) Join(i, looks[i], pictureHeightPx, tracks, settings);
        return tracks;
    }

    private static void Join(int index, Look look, double pictureHeightPx, List<PersonTrack> tracks, ScoutSettings settings)
    {
        var seen = PersonBoxes.Join(look.Seen);
        var mounts = Mount.Pairs(seen, pictureHeightPx);
        var horseInView = seen.Any(d => d.Kind == DetectedKind.Horse);
        var free = seen.Where(d => d.Kind == DetectedKind.Person).ToList();
        var live = tracks.Where(t => look.TimeSeconds - t.LastTime <= settings.GapMaximumSeconds).ToList();
        var pairs = (from p in free
                     from t in live
                     let cost = Cost(t, p.Box, look.TimeSeconds, settings)
                     where cost < 1
                     orderby cost - p.Score
                     select (Person: p, Track: t)).ToList();
        foreach (var (person, track) in pairs)
            if (free.Contains(person) && live.Remove(track)) Take(person, track);
        foreach (var person in free.ToList())
        {
            tracks.Add(new PersonTrack());
            Take(person, tracks[^1]);
        }

        void Take(Detection person, PersonTrack track)
        {
            free.Remove(person);
            track.Add(index, look.TimeSeconds, person, mounts.TryGetValue(person, out var horse) ? horse : null, horseInView);
        }
    }

    // 0 = just where it was expected; 1 and more = cannot be the same person.
    private static double Cost(PersonTrack track, BoxPx box, double time, ScoutSettings settings)
    {
        var last = track.LastBox;
        var growth = Math.Max(last.Height / box.Height, box.Height / last.Height);
        if (growth > settings.GrowthMaximum) return 1;
        var height = Math.Max(last.Height, box.Height);
        // The head end is the steady end of a box: legs are often lost. Stay or go on, whichever fits.
        var expected = track.Expected(time);
        var top = new PointPx(box.Centre.X, box.Y);
        var carried = new PointPx(expected.X, expected.Y - last.Height / 2).DistanceTo(top);
        var still = new PointPx(last.Centre.X, last.Y).DistanceTo(top);
        return Math.Min(carried, still) / height / settings.JumpMaximumHeights;
    }
}
