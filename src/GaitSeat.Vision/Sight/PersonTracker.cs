using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Joins the persons of a clip's looks into tracks, nearest first.</summary>
public static class PersonTracker
{
    public static IReadOnlyList<PersonTrack> Follow(IReadOnlyList<Look> looks, ScoutSettings settings)
    {
        ArgumentNullException.ThrowIfNull(looks);
        ArgumentNullException.ThrowIfNull(settings);
        var tracks = new List<PersonTrack>();
        for (var i = 0; i < looks.Count; i++) Join(i, looks[i], tracks, settings);
        return tracks;
    }

    private static void Join(int index, Look look, List<PersonTrack> tracks, ScoutSettings settings)
    {
        var persons = look.Seen.Where(d => d.Kind == DetectedKind.Person).ToList();
        var live = tracks.Where(t => look.TimeSeconds - t.LastTime <= settings.GapMaximumSeconds).ToList();
        var pairs = from p in persons
                    from t in live
                    let cost = Cost(t, p.Box, look.TimeSeconds, settings)
                    where cost < 1
                    orderby cost - p.Score * 0.2
                    select (Person: p, Track: t);
        var takenTracks = new HashSet<PersonTrack>();
        var takenPersons = new HashSet<Detection>();
        foreach (var (person, track) in pairs.ToList())
        {
            if (takenTracks.Contains(track) || takenPersons.Contains(person)) continue;
            takenTracks.Add(track);
            takenPersons.Add(person);
            track.Add(index, look.TimeSeconds, person, look.Seen);
        }

        foreach (var person in persons.Where(p => !takenPersons.Contains(p)))
        {
            var fresh = new PersonTrack();
            fresh.Add(index, look.TimeSeconds, person, look.Seen);
            tracks.Add(fresh);
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
