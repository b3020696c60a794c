using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>Finds a window of one picture again in another, from coarse to fine, there and back.</summary>
internal sealed class PointFollower(MatchSettings settings)
{
    private readonly WindowMatcher _matcher = new();
    // A coarse level only has to hand a start to the next finer one, whose window is sixteen px wide.
    private const double CoarseSettledFactor = 10;

    private readonly MatchLimits _fine = new(settings.Iterations, settings.SettledPx, settings.FarthestPx);
    private readonly MatchLimits _coarse = new(settings.Iterations, CoarseSettledFactor * settings.SettledPx, settings.FarthestPx);

    /// <param name="guess">Expected motion, level-0 px.</param>
    /// <param name="rough">A first pass on coarse levels: the window need not look alike yet.</param>
    /// <param name="coarse">Level to begin on; levels on which the window leaves the picture are passed over, but not the finest.</param>
    public bool TryFollow(GreyPyramid before, GreyPyramid now, PointPx place, (double X, double Y) guess, int coarse, int fine, bool rough, out FlowPoint point)
    {
        point = default;
        if (!OneWay(before, now, place, guess, coarse, fine, out var there)) return false;
        if (!rough && !(there.NoiseVariance <= settings.MaxUnlikeness * there.Contrast)) return false;
        var reached = new PointPx(place.X + there.X, place.Y + there.Y);
        if (!OneWay(now, before, reached, (-guess.X, -guess.Y), coarse, fine, out var back)) return false;
        var (missX, missY) = ((there.X + back.X) / (1 << fine), (there.Y + back.Y) / (1 << fine));
        var seen = there.Structure.Quadratic(missX, missY) / there.Structure.Eigenvalues.Large;
        if (!(seen <= settings.RoundTripPx * settings.RoundTripPx)) return false;
        point = new(place.X, place.Y, there.X, there.Y, Information(there, fine), 1);
        return true;
    }

    private bool OneWay(GreyPyramid from, GreyPyramid to, PointPx place, (double X, double Y) guess, int coarse, int fine, out Way way)
    {
        way = new(guess.X, guess.Y, default, double.NaN, double.NaN);
        for (var level = coarse; level >= fine; level--)
        {
            var scale = 1.0 / (1 << level);
            if (!_matcher.Load(from.Levels[level], place.X * scale, place.Y * scale))
            {
                if (level == fine) return false;
                continue;
            }

            var (x, y) = ((place.X + way.X) * scale, (place.Y + way.Y) * scale);
            if (!_matcher.Settle(to.Levels[level], ref x, ref y, Pull(scale), level == fine ? _fine : _coarse, out var noise)) return false;
            way = new((x / scale) - place.X, (y / scale) - place.Y, _matcher.Structure, noise, _matcher.Contrast);
        }

        return true;
    }

    /// <summary>Noise over the spread of the guess: the two weigh against each other as in any estimate with a prior.</summary>
    private double Pull(double scale)
    {
        var spread = settings.GuessSpreadPx * scale;
        return settings.NoiseGrey * settings.NoiseGrey / (spread * spread);
    }

    private Tensor Information(Way way, int level)
    {
        var noise = Math.Max(way.NoiseVariance, settings.NoiseGrey * settings.NoiseGrey);
        var covariance = way.Structure.PlusIdentity(Pull(1.0 / (1 << level))).Inverse * (noise * (1 << level) * (1 << level));
        return covariance.PlusIdentity(settings.BestPrecisionPx * settings.BestPrecisionPx).Inverse;
    }

    private readonly record struct Way(double X, double Y, Tensor Structure, double NoiseVariance, double Contrast);
}
