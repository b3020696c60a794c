using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Strides;

/// <summary>
/// Steadies noisy sit instants by their neighbours: a horse's strides are even to about 2 %, so that the line through the two sits before and the two
/// after foretells a sit. A sit that was well seen keeps its place; one that was not leans on the rhythm.
/// </summary>
internal static class Rhythm
{
    private const int Neighbours = 2;
    private const int LeastNeighbours = 3;

    /// <summary>A sit further than this many errors from the rhythm is taken to be worse seen than it says.</summary>
    private const double Surprise = 2.5;

    /// <param name="spreadShare">How far a true sit lies from its neighbours' line, share of a stride, one standard deviation.</param>
    public static List<Sit> Steady(IReadOnlyList<Sit> sits, double period, double spreadShare)
    {
        var steady = new List<Sit>(sits.Count);
        for (var k = 0; k < sits.Count; k++)
        {
            var sit = sits[k];
            steady.Add(sit.IsMissing || Foretold(sits, k) is not { } rhythm
                ? sit
                : Both(sit, rhythm with { Se = Math.Sqrt(rhythm.Se * rhythm.Se + Math.Pow(spreadShare * period, 2)) }));
        }

        return steady;
    }

    private static Sit Both(Sit seen, Sit rhythm)
    {
        var apart = Math.Abs(seen.Seconds - rhythm.Seconds);
        var se = apart > Surprise * Math.Sqrt(seen.Se * seen.Se + rhythm.Se * rhythm.Se) ? Math.Max(seen.Se, apart / 2 * Math.Min(1, seen.Se / rhythm.Se)) : seen.Se;
        double a = se * se, b = rhythm.Se * rhythm.Se;
        return a + b == 0 ? seen : new((seen.Seconds * b + rhythm.Seconds * a) / (a + b), Math.Sqrt(a * b / (a + b)));
    }

    private static Sit? Foretold(IReadOnlyList<Sit> sits, int k)
    {
        var squares = new LeastSquares(2);
        double weights = 0;
        for (var j = Math.Max(0, k - Neighbours); j <= Math.Min(sits.Count - 1, k + Neighbours); j++)
        {
            if (j == k || sits[j].IsMissing) continue;
            var weight = 1 / Math.Max(1e-6, sits[j].Se);
            squares.Add([weight, weight * (j - k)], weight * sits[j].Seconds);
            weights += weight * weight;
        }

        return squares.Count >= LeastNeighbours && squares.Solve() is { } line ? new(line.Solution[0], 1 / Math.Sqrt(weights)) : null;
    }
}
