using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.View;

/// <summary>
/// The rider's turn out of the picture plane, frame by frame. From how she grows while she passes (see <see cref="ViewSettings"/>); the distance of the camera, which that needs, is
/// averaged over by what each distance makes of the way ridden and of the body's own turning. Where the rider hardly moves, near and far shoulder and hip alone tell, poorly.
/// </summary>
/// <param name="TurnDeg">By frame: + turned away from the camera.</param>
/// <param name="SeDeg">By frame, one standard error.</param>
internal sealed record TurnCourse(double[] TurnDeg, double[] SeDeg)
{
    private const double NearestLegs = 4;
    private const double FarthestLegs = 120;
    private const int Distances = 80;

    public static TurnCourse Of(Sightings sightings, Facing[] facing, ViewSettings settings)
    {
        if (sightings.KnownTurnDeg is { } known) return new(known, new double[known.Length]);
        var course = new TurnCourse(new double[sightings.Count], new double[sightings.Count]);
        for (var first = 0; first < sightings.Count;)
        {
            var end = first + 1;
            while (end < sightings.Count && facing[end] == facing[first] && !sightings.CutBefore[end]) end++;
            course.Stretch(sightings, first, end - first, facing[first] == Facing.Left ? -1 : 1, settings);
            first = end;
        }

        return course;
    }

    private void Stretch(Sightings sightings, int first, int count, int sign, ViewSettings settings)
    {
        var views = new PassReader(sightings, first, count, sign, settings).Windows();
        var (turn, se) = Windows(views, settings);
        double[] windowSeconds = [.. views.Select(v => v.AtSeconds)];
        for (var i = first; i < first + count; i++)
        {
            var at = sightings.TimeSeconds[i];
            (TurnDeg[i], SeDeg[i]) = views.Count == 0
                ? Seen(sightings.ViewTurnDeg?[i] ?? double.NaN, settings)
                : (Between(windowSeconds, turn, at), Math.Max(settings.LeastSeDeg, Between(windowSeconds, se, at)));
        }
    }

    private static (double[] Turn, double[] Se) Windows(List<PassView> views, ViewSettings settings)
    {
        double[] turn = new double[views.Count], se = new double[views.Count];
        var middleLegPx = Robust.Median([.. views.Select(v => v.LegPx)]);
        var guesses = Enumerable.Range(0, Distances)
            .Select(k => NearestLegs * Math.Pow(FarthestLegs / NearestLegs, k / (Distances - 1.0)))
            .Select(d => TurnGuess.At(d, views, middleLegPx, settings)).ToArray();
        var most = guesses.Max(g => g.LogLikelihood);
        var weights = Array.ConvertAll(guesses, g => Math.Exp(g.LogLikelihood - most));
        var total = weights.Sum();
        for (var i = 0; i < turn.Length; i++)
        {
            if (!views[i].Tells(settings))
            {
                (turn[i], se[i]) = Seen(views[i].SeenDeg, settings);
                continue;
            }

            turn[i] = guesses.Zip(weights, (g, w) => w * g.TurnDeg[i]).Sum() / total;
            se[i] = Math.Sqrt(guesses.Zip(weights, (g, w) => w * (g.SeDeg[i] * g.SeDeg[i] + Math.Pow(g.TurnDeg[i] - turn[i], 2))).Sum() / total);
        }

        return (turn, se);
    }

    /// <summary>The body's own turning, with its gain and its steady error, against how far from side-on people film.</summary>
    private static (double Turn, double Se) Seen(double seenDeg, ViewSettings settings)
    {
        if (!double.IsFinite(seenDeg)) return (0, settings.UsualTurnDeg);
        double usual = settings.UsualTurnDeg * settings.UsualTurnDeg, steady = settings.SeenSteadySeDeg * settings.SeenSteadySeDeg, gain = settings.SeenGain;
        var weight = usual / (gain * gain * usual + steady);
        return (gain * weight * seenDeg, Math.Sqrt(steady * weight));
    }

    /// <summary>On the straight line between two windows, or on from the last two.</summary>
    private static double Between(double[] seconds, double[] values, double at)
    {
        if (seconds.Length == 1) return values[0];
        var k = Math.Clamp(Instants.NotBefore(seconds, at), 1, seconds.Length - 1);
        var share = (at - seconds[k - 1]) / (seconds[k] - seconds[k - 1]);
        return values[k - 1] + Math.Clamp(share, -1, 2) * (values[k] - values[k - 1]);
    }
}
