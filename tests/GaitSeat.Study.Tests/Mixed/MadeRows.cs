using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Tests.Mixed;

/// <summary>Small unbalanced rows with riders, horses and a slope, from a seed.</summary>
internal static class MadeRows
{
    /// <summary>A third factor beside crossed horses: sessions nested in riders, with a spread of their own.</summary>
    public static MixedData WithSessions(int seed)
    {
        var data = Of(seed, rows: 240);
        var riders = data.Random[0].Groups;
        var session = Grouping.Of("session", [.. data.Outcome.Select((_, i) => $"day {i / 12 % 4}")]).Within(riders);
        var random = new Random(seed + 1);
        var days = session.Levels.Select(_ => Normal.Sample(random, 0, 1.2)).ToArray();
        return data with { Outcome = [.. data.Outcome.Select((y, i) => y + days[session.LevelOf[i]])], Random = [.. data.Random, new(session, [data.Fixed[0]])] };
    }

    public static MixedData Of(int seed, bool nested = false, bool weights = false, bool measured = false, int riders = 12, int horses = 4, int rows = 180)
    {
        var random = new Random(seed);
        double Noise(double sd) => Normal.Sample(random, 0, sd);
        var level = Enumerable.Range(0, riders).Select(_ => (Base: Noise(2), Slope: Noise(0.4))).ToArray();
        var horse = Enumerable.Range(0, riders * horses).Select(_ => Noise(1.5)).ToArray();
        string[] riderOf = [.. Enumerable.Range(0, rows).Select(i => $"r{i % riders}")], horseOf = new string[rows];
        double[] length = new double[rows], outcome = new double[rows], spread = new double[rows];
        for (var i = 0; i < rows; i++)
        {
            var (r, h) = (i % riders, random.Next(1 + i % horses));
            horseOf[i] = $"h{h}";
            length[i] = 0.3 * (r - 6) + Noise(3);
            spread[i] = 0.3 + 1.2 * random.NextDouble();
            outcome[i] = 12 + 0.2 * length[i] + level[r].Base + level[r].Slope * length[i] + horse[nested ? r * horses + h : h] + Noise(weights || measured ? spread[i] : 1) + (measured ? Noise(0.7) : 0);
        }

        var intercept = DesignColumn.Intercept(rows);
        var slope = new DesignColumn("length", length);
        var rider = Grouping.Of("rider", riderOf);
        var horseGroups = Grouping.Of("horse", horseOf);
        return new()
        {
            Outcome = outcome, Fixed = [intercept, slope],
            Random = [new(rider, [intercept, slope]), new(nested ? horseGroups.Within(rider) : horseGroups, [intercept])],
            Weights = weights ? [.. spread.Select(s => 1 / (s * s))] : null, MeasurementVariance = measured ? [.. spread.Select(s => s * s)] : null,
        };
    }
}
