using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Finds every person of the looks who is not the rider: tracks not chosen, and single boxes that no track took up.</summary>
internal static class OtherPeople
{
    // A second box over the rider: nearly the same one, or one of some size that lies within (half a body). A small one within may be a
    // person further off. Shares as in PersonBoxes, stricter, since a person taken for the rider keeps a face.
    private const double SameOverlap = 0.5;
    private const double WithinShare = 0.8;
    private const double HalfBodyShare = 0.4;

    // Horse and rider, or the horse, taken for one person: far wider over its height than people on their feet (about 0.3 to 0.5).
    private const double WideShare = 0.75;

    /// <param name="path">The rider's path, as yet without others.</param>
    /// <param name="looks">What the detector saw.</param>
    /// <param name="tracks">All persons' tracks.</param>
    /// <param name="rider">Those of them that are the rider's.</param>
    /// <param name="settings">How far apart looks are.</param>
    public static RiderPath Add(
        RiderPath path, IReadOnlyList<Look> looks, IReadOnlyList<PersonTrack> tracks, IReadOnlyList<PersonTrack> rider, ScoutSettings settings)
    {
        BoxPx?[] riders = [.. path.TimeSeconds.Select(path.RiderAt)], horses = [.. path.TimeSeconds.Select(path.HorseAt)];
        foreach (var (look, person, _) in rider.SelectMany(t => t.Steps)) riders[look] = person;
        var taken = tracks.SelectMany(t => t.Steps).Select(s => (s.Look, Corner(s.Person))).ToHashSet();
        var sure = looks.SelectMany((l, i) => l.Seen.Where(d => d.Kind == DetectedKind.Person && d.Score >= settings.OtherScoreMinimum).Select(d => (Look: i, d.Box))).ToArray();
        var corners = sure.Select(s => (s.Look, Corner(s.Box))).ToHashSet();
        var single = sure.Where(s => !taken.Contains((s.Look, Corner(s.Box))));
        var seen = tracks.Except(rider)
            .Select(t => t.Steps.Where(s => corners.Contains((s.Look, Corner(s.Person)))).Select(s => (s.Look, Box: s.Person)))
            .Concat(single.Select(s => Enumerable.Repeat(s, 1)));
        var others = seen.Select(person => person.Where(s => !IsRider(s.Box, riders[s.Look], horses[s.Look])).ToList());
        return path with { Others = [.. others.Where(o => o.Count > 0).Select(o => Person(o, looks, 1 / settings.RateHz))] };
    }

    private static OtherPerson Person(List<(int Look, BoxPx Box)> seen, IReadOnlyList<Look> looks, double step)
    {
        int first = seen[0].Look, last = seen[^1].Look;
        // A clip of fewer frames a second than the scout asks for has its looks further apart.
        var from = looks[first].TimeSeconds - step;
        if (first > 0) from = Math.Min(from, looks[first - 1].TimeSeconds);
        var to = looks[last].TimeSeconds + step;
        if (last + 1 < looks.Count) to = Math.Max(to, looks[last + 1].TimeSeconds);
        return new([.. seen.Select(s => looks[s.Look].TimeSeconds)], [.. seen.Select(s => s.Box)], new(from, to), step);
    }

    private static bool IsRider(BoxPx box, BoxPx? rider, BoxPx? horse)
    {
        if (rider is not { } r) return false;
        if (box.Overlap(r) > SameOverlap || (box.Height > HalfBodyShare * r.Height && Shared(box, r) > WithinShare * box.Area)) return true;
        return horse is { } h && box.Width > WideShare * box.Height && (box.Overlap(h) > SameOverlap || box.Overlap(Both(r, h)) > SameOverlap);
    }

    private static double Shared(BoxPx a, BoxPx b) =>
        Math.Max(0, Math.Min(a.Right, b.Right) - Math.Max(a.X, b.X)) * Math.Max(0, Math.Min(a.Bottom, b.Bottom) - Math.Max(a.Y, b.Y));

    private static BoxPx Both(BoxPx a, BoxPx b)
    {
        var (x, y) = (Math.Min(a.X, b.X), Math.Min(a.Y, b.Y));
        return new(x, y, Math.Max(a.Right, b.Right) - x, Math.Max(a.Bottom, b.Bottom) - y);
    }

    // A track's box may reach further down than the one detected, but starts at the same corner.
    private static (double X, double Y, double Width) Corner(BoxPx box) => (box.X, box.Y, box.Width);
}
