using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>One person followed through the looks of a clip.</summary>
public sealed class PersonTrack
{
    private readonly List<(int Look, double Time, Detection Person, Detection? Horse, bool HorseInView)> _steps = [];

    public int FirstLook => _steps[0].Look;

    public int LastLook => _steps[^1].Look;

    public double LastTime => _steps[^1].Time;

    public int Count => _steps.Count;

    public BoxPx LastBox => _steps[^1].Person.Box;

    /// <summary>Looks in which the person sits on a horse.</summary>
    public int MountedCount => _steps.Count(s => s.Horse is not null);

    /// <summary>Share of the looks with any horse in view in which the person sits on one; 0 when no horse was ever in view.</summary>
    public double MountedShare
    {
        get
        {
            var inView = _steps.Count(s => s.HorseInView);
            return inView == 0 ? 0 : (double)MountedCount / inView;
        }
    }

    /// <summary>
    /// How much of a subject the person is: score x height over all looks, times the share of time on a horse, times how side-on the horse shows
    /// (its box's width over height: about 1.2 from the side, half of it from the front), times how steadily the person goes with it.
    /// </summary>
    public double Weight
    {
        get
        {
            var mounted = _steps.Where(s => s.Horse is not null).Select(s => (Person: s.Person.Box, Horse: s.Horse!.Value.Box)).ToList();
            if (mounted.Count == 0) return 0;
            var sideOn = mounted.Average(m => Math.Clamp(m.Horse.Width / m.Horse.Height / 1.2, 0.2, 1));
            return _steps.Sum(s => s.Person.Score * s.Person.Box.Height) * MountedShare * sideOn * GoesWith(mounted);
        }
    }

    // A rider keeps the place along the horse within the jitter of the boxes (SD about 0.07 of its length); one whom a horse passes drifts
    // through the whole of it (SD 0.29).
    private static double GoesWith(List<(BoxPx Person, BoxPx Horse)> mounted)
    {
        const double Drifting = 0.2;
        var across = mounted.Select(m => Mount.Across(m.Person, m.Horse)).ToList();
        var mean = across.Average();
        return Math.Exp(-across.Average(a => (a - mean) * (a - mean)) / (Drifting * Drifting));
    }

    public IEnumerable<(int Look, BoxPx Person, BoxPx? Horse)> Steps => _steps.Select(s => (s.Look, s.Person.Box, s.Horse?.Box));

    /// <param name="look">Index of the look.</param>
    /// <param name="time">Its time, s.</param>
    /// <param name="person">The person's box.</param>
    /// <param name="horse">The horse under the person; null where there is none.</param>
    /// <param name="horseInView">Whether any horse was seen in this look.</param>
    public void Add(int look, double time, Detection person, Detection? horse, bool horseInView) =>
        _steps.Add((look, time, person, horse, horseInView));

    /// <summary>Where the box's centre is expected at a later time: the last two steps carried on, for at most half a second.</summary>
    public PointPx Expected(double time)
    {
        var last = _steps[^1];
        if (_steps.Count < 2) return last.Person.Box.Centre;
        var before = _steps[^2];
        var share = Math.Min(time - last.Time, 0.5) / (last.Time - before.Time);
        PointPx a = before.Person.Box.Centre, b = last.Person.Box.Centre;
        return new(b.X + share * (b.X - a.X), b.Y + share * (b.Y - a.Y));
    }
}
