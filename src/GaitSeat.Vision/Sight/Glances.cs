namespace GaitSeat.Vision.Sight;

/// <summary>Tells from glances, about one a second, which parts of a clip are worth looking at.</summary>
public static class Glances
{
    /// <summary>A shorter stretch without anybody is looked at too, s: starting the decoder again costs as much, and one glance that misses a rider cannot tear the ride.</summary>
    private const double ShortestLeftOut = 1.5;

    /// <param name="glances">What was seen, in order of time.</param>
    /// <param name="settings">From which score on somebody counts, and how far apart glances may be.</param>
    /// <returns>
    /// Stretches in order of time, from one glance to another; the last reaches to the end of the clip, so that somebody hears where it is and whether it is whole, and ends at infinity.
    /// A stretch between two glances is left out when neither shows anybody and they are near enough to each other.
    /// </returns>
    public static IReadOnlyList<TimeSpanSeconds> WorthALook(IReadOnlyList<Look> glances, ScoutSettings settings)
    {
        ArgumentNullException.ThrowIfNull(glances);
        ArgumentNullException.ThrowIfNull(settings);
        var worth = new List<TimeSpanSeconds>();
        // What comes before the first glance nobody has seen.
        if (glances.Count == 0 || glances[0].TimeSeconds > 0) Add(new(0, glances.Count == 0 ? double.PositiveInfinity : glances[0].TimeSeconds));
        for (var i = 0; i < glances.Count; i++)
        {
            var from = glances[i].TimeSeconds;
            if (i + 1 == glances.Count) Add(new(from, double.PositiveInfinity));
            else if (Anybody(glances[i]) || Anybody(glances[i + 1]) || glances[i + 1].TimeSeconds - from > settings.GlanceApartMaximumSeconds) Add(new(from, glances[i + 1].TimeSeconds));
        }

        return worth;

        bool Anybody(Look glance) => glance.Seen.Any(d => d.Score >= settings.GlanceScoreMinimum);

        void Add(TimeSpanSeconds stretch)
        {
            if (worth.Count > 0 && stretch.StartSeconds - worth[^1].EndSeconds < ShortestLeftOut) worth[^1] = worth[^1] with { EndSeconds = stretch.EndSeconds };
            else worth.Add(stretch);
        }
    }
}
