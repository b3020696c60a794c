using MathNet.Numerics.Statistics;

namespace GaitSeat.Faults.Evaluation;

/// <summary>A figure with its interval.</summary>
public readonly record struct Interval(double Value, double Lower, double Upper);

/// <summary>
/// Intervals by drawing riders, with all their spells, with replacement: spells of one rider are alike, so drawing spells would claim
/// more than is known. Percentile intervals.
/// </summary>
public sealed class RiderBootstrap
{
    private readonly int[][] _groups;
    private readonly int _spells;
    private readonly int _seed;
    private readonly int _rounds;
    private readonly double _tail;

    public RiderBootstrap(IReadOnlyList<string> riders, int seed, int rounds, double confidence)
    {
        ArgumentNullException.ThrowIfNull(riders);
        ArgumentOutOfRangeException.ThrowIfLessThan(rounds, 1);
        _groups = [.. Enumerable.Range(0, riders.Count).GroupBy(i => riders[i], StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => g.ToArray())];
        (_spells, _seed, _rounds, _tail) = (riders.Count, seed, rounds, (1 - confidence) / 2);
    }

    /// <summary>A figure of the spells as weighted; a round in which it is not defined (one answer only) is left out.</summary>
    /// <param name="figure">Takes how often each spell was drawn.</param>
    public Interval Of(Func<int[], double> figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var ones = new int[_spells];
        Array.Fill(ones, 1);
        var random = new Random(_seed);
        var drawn = Enumerable.Range(0, _rounds).Select(_ => figure(Draw(random))).Where(double.IsFinite).ToArray();
        return drawn.Length == 0
            ? new(figure(ones), double.NaN, double.NaN)
            : new(figure(ones), drawn.Quantile(_tail), drawn.Quantile(1 - _tail));
    }

    private int[] Draw(Random random)
    {
        var weights = new int[_spells];
        for (var draw = 0; draw < _groups.Length; draw++)
            foreach (var i in _groups[random.Next(_groups.Length)]) weights[i]++;
        return weights;
    }
}
