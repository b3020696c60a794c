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
    /// (its box's width over height: about 1.2 from the side, half of it from the front).
    /// </summary>
    public double Weight
    {
        get
        {
            if (MountedCount == 0) return 0;
            var sideOn = _steps.Where(s => s.Horse is not null).Average(s => Math.Clamp(s.Horse!.Value.Box.Width / s.Horse.Value.Box.Height / 1.2, 0.2, 1));
            return _steps.Sum(s => s.Person.Score * s.Person.Box.Height) * MountedShare * sideOn;
        }
    }

    public IEnumerable<(int Look, BoxPx Person, BoxPx? Horse)> Steps => _steps.Select(s => (s.Look, s.Person.Box, s.Horse?.Box));

    public void Add(int look, double time, Detection person, IReadOnlyList<Detection> seen)
    {
        ArgumentNullException.ThrowIfNull(seen);
        _steps.Add((look, time, person, Mount.Under(person.Box, seen), seen.Any(d => d.Kind == DetectedKind.Horse)));
    }

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
