using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Chooses one rider over the whole clip and makes the smoothed path.</summary>
public static class RiderChoice
{
    public const string NoFrames = "no_frames";
    public const string NoRider = "no_rider";
    public const string NoHorse = "no_horse";
    public const string TwoRiders = "two_riders";

    /// <param name="looks">What the detector saw, in order of time.</param>
    public static RiderPath Choose(IReadOnlyList<Look> looks, int widthPx, int heightPx, ScoutSettings settings)
    {
        ArgumentNullException.ThrowIfNull(looks);
        ArgumentNullException.ThrowIfNull(settings);
        var tracks = PersonTracker.Follow(looks, heightPx, settings);
        var riders = tracks.Where(t => t.MountedShare >= settings.MountedShareMinimum && t.Weight > 0).OrderByDescending(t => t.Weight).ToList();
        var draft = new Draft(looks, widthPx, heightPx, settings);
        if (riders.Count == 0) return OtherPeople.Add(draft.Empty(ReasonFor(looks)), looks, tracks, [], settings);
        var chosen = new List<PersonTrack> { riders[0] };
        var second = false;
        foreach (var t in riders.Skip(1))
        {
            if (chosen.TrueForAll(c => t.LastLook < c.FirstLook || t.FirstLook > c.LastLook)) chosen.Add(t);
            else second |= t.Weight >= settings.SecondRiderShare * riders[0].Weight;
        }

        return OtherPeople.Add(draft.Path(chosen, second), looks, tracks, chosen, settings);
    }

    private static string ReasonFor(IReadOnlyList<Look> looks) =>
        looks.Count == 0 ? NoFrames
        : !looks.Any(l => l.Seen.Any(d => d.Kind == DetectedKind.Person)) ? NoRider
        : looks.Any(l => l.Seen.Any(d => d.Kind == DetectedKind.Horse)) ? NoRider
        : NoHorse;

    private sealed record Draft(IReadOnlyList<Look> Looks, int WidthPx, int HeightPx, ScoutSettings Settings)
    {
        private double[] Times => [.. Looks.Select(l => l.TimeSeconds)];

        public RiderPath Empty(string reason) => new()
        {
            TimeSeconds = Times,
            Rider = new BoxPx?[Looks.Count],
            Horse = new BoxPx?[Looks.Count],
            WidthPx = WidthPx,
            HeightPx = HeightPx,
            Spans = [],
            Notes = [],
            MissingReason = reason,
            HorseSeenShare = 0,
            RiderSeenShare = 0,
        };

        public RiderPath Path(List<PersonTrack> chosen, bool second)
        {
            var times = Times;
            BoxPx?[] rider = new BoxPx?[times.Length], horse = new BoxPx?[times.Length];
            foreach (var (look, person, under) in chosen.SelectMany(t => t.Steps)) (rider[look], horse[look]) = (person, under);
            return Empty("") with
            {
                Rider = Each(chosen, rider, times),
                Horse = HorsePlace.Fill(rider, Each(chosen, horse, times)),
                Spans = Joined([.. chosen.OrderBy(t => t.FirstLook).Select(t => SpanOf(t, times))]),
                Notes = second ? [TwoRiders] : [],
                MissingReason = null,
                HorseSeenShare = (double)horse.Count(b => b is not null) / times.Length,
                RiderSeenShare = (double)rider.Count(b => b is not null) / times.Length,
            };
        }

        // Each track is smoothed alone: between two of them the camera may have been changed.
        private BoxPx?[] Each(List<PersonTrack> chosen, BoxPx?[] raw, double[] times)
        {
            var all = new BoxPx?[raw.Length];
            foreach (var t in chosen)
            {
                var range = t.FirstLook..(t.LastLook + 1);
                PathSmoothing.Smooth(times[range], raw[range], Settings).CopyTo(all, t.FirstLook);
            }

            return all;
        }

        // One look further at either end: the rider comes into view between two looks.
        private TimeSpanSeconds SpanOf(PersonTrack track, double[] times)
        {
            var step = 1 / Settings.RateHz;
            return new(times[track.FirstLook] - step, times[track.LastLook] + step);
        }

        private static List<TimeSpanSeconds> Joined(List<TimeSpanSeconds> spans)
        {
            var joined = new List<TimeSpanSeconds>();
            foreach (var s in spans)
            {
                if (joined.Count > 0 && s.StartSeconds <= joined[^1].EndSeconds) joined[^1] = new(joined[^1].StartSeconds, Math.Max(joined[^1].EndSeconds, s.EndSeconds));
                else joined.Add(s);
            }

            return joined;
        }
    }
}
