namespace GaitSeat.Motion.Strides;

/// <summary>
/// Steadies noisy sit instants by their neighbours: a horse's strides are even to about 2 %, so that the line through the nearest sits before and after foretells
/// a sit, as long as none between was missed. A sit that was well seen keeps its place; one that was not leans on the rhythm.
/// </summary>
internal static class Rhythm
{
    private const int Neighbours = 4;
    private const int LeastNeighbours = 3;

    /// <summary>How far neighbours may lie, strides: beside an end they are all on one side.</summary>
    private const int Farthest = 3;

    /// <summary>A sit further than this many errors from the rhythm is taken to be worse seen than it says.</summary>
    private const double Surprise = 2.5;

    /// <summary>A rider keeps to the horse's beat more closely than strides are even. No source; the made riders keep to it exactly.</summary>
    private const double BeatSpread = 0.5;

    /// <summary>Neighbours share some of a sit's noise (the same hem over the same hip), so leaning on them helps less than if they did not. Set on the made sets.</summary>
    private const double SharedNoise = 1.2;

    /// <param name="beats">By sit: the horse's beat that belongs to it; missing where it is not known.</param>
    /// <param name="spreadShare">How far a true sit lies from where its neighbours foretell it, share of a stride, one standard deviation.</param>
    public static List<Sit> Steady(IReadOnlyList<Sit> sits, IReadOnlyList<Sit> beats, double period, double spreadShare)
    {
        var steady = new List<Sit>(sits.Count);
        for (var k = 0; k < sits.Count; k++)
        {
            var sit = sits[k];
            var spread = spreadShare * period;
            steady.Add(sit.IsMissing || (ByBeat(sits, beats, k, BeatSpread * spread) ?? ByLine(sits, k, spread)) is not { } foretold ? sit : Both(sit, foretold));
        }

        return steady;
    }

    private static Sit Both(Sit seen, Sit rhythm)
    {
        var apart = Math.Abs(seen.Seconds - rhythm.Seconds);
        var se = apart > Surprise * Math.Sqrt(seen.Se * seen.Se + rhythm.Se * rhythm.Se) ? Math.Max(seen.Se, apart / 2 * Math.Min(1, seen.Se / rhythm.Se)) : seen.Se;
        double a = se * se, b = rhythm.Se * rhythm.Se;
        return a + b == 0 ? seen : new((seen.Seconds * b + rhythm.Seconds * a) / (a + b), Math.Min(seen.Se, SharedNoise * Math.Sqrt(a * b / (a + b))));
    }

    /// <summary>The line through the neighbours, each as uncertain as it was seen and as strides are uneven, read at the sit.</summary>
    private static Sit? ByLine(IReadOnlyList<Sit> sits, int k, double spread)
    {
        double w = 0, wd = 0, wdd = 0, wt = 0, wdt = 0;
        var near = Near(sits, k);
        foreach (var j in near)
        {
            var (weight, away) = (1 / (sits[j].Se * sits[j].Se + spread * spread), j - k);
            w += weight;
            wd += weight * away;
            wdd += weight * away * away;
            wt += weight * sits[j].Seconds;
            wdt += weight * away * sits[j].Seconds;
        }

        var fixedness = w * wdd - wd * wd;
        return near.Count >= LeastNeighbours ? new((wdd * wt - wd * wdt) / fixedness, Math.Sqrt(wdd / fixedness + spread * spread)) : null;
    }

    /// <summary>As long after the horse's beat as the neighbours sit after theirs: this follows strides of uneven length, too.</summary>
    private static Sit? ByBeat(IReadOnlyList<Sit> sits, IReadOnlyList<Sit> beats, int k, double spread)
    {
        if (beats[k].IsMissing) return null;
        double w = 0, lag = 0;
        var near = Near(sits, k).FindAll(j => !beats[j].IsMissing);
        foreach (var j in near)
        {
            var weight = 1 / (sits[j].Se * sits[j].Se + beats[j].Se * beats[j].Se + spread * spread);
            w += weight;
            lag += weight * (sits[j].Seconds - beats[j].Seconds);
        }

        return near.Count >= LeastNeighbours ? new(beats[k].Seconds + lag / w, Math.Sqrt(1 / w + beats[k].Se * beats[k].Se + spread * spread)) : null;
    }

    private static List<int> Near(IReadOnlyList<Sit> sits, int k)
    {
        var near = new List<int>();
        bool before = true, after = true;
        for (var away = 1; away <= Farthest && near.Count < Neighbours; away++)
        {
            before = before && k - away >= 0 && !sits[k - away].IsMissing;
            after = after && k + away < sits.Count && !sits[k + away].IsMissing;
            if (before) near.Add(k - away);
            if (after) near.Add(k + away);
        }

        return near;
    }
}
