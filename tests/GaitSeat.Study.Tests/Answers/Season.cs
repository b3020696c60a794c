using GaitSeat.Study.Definition;
using GaitSeat.Study.Planning;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Tests.Answers;

/// <summary>A simulated season as a table of strides: rise height with a known effect of 0.3 per cm, an outcome without, and a coach's value beside the rise.</summary>
internal static class Season
{
    public static StudyTable Table { get; } = Make();

    public static StudySettings Study { get; } = new()
    {
        Question = "How does the stirrup's length change the rise?", Outcomes = ["rise_height_cm", "noise_pct"], Exposure = "stirrup_length_cm", Adjustment = [],
        Filters = ["gait = rising_trot"], Dose = new() { Session = false },
    };

    private static StudyTable Make()
    {
        var season = SimulatedSeason.Draw(new() { Riders = 24, LengthsPerRider = 4, StridesPerLength = 5, EffectPerCm = 0.3, EffectSdPerCm = 0.05 }, new(31));
        var rows = season.Outcome.Length;
        var random = new Random(32);
        double[] noise = new double[rows], se = new double[rows], coach = new double[rows], rise = [.. season.Outcome], hole = new double[rows];
        for (var i = 0; i < rows; i++)
        {
            (noise[i], se[i]) = (Normal.Sample(random, 50, 5), 0.2 + 0.2 * random.NextDouble());
            coach[i] = 0.5 + season.Outcome[i] + Normal.Sample(random, 0, 0.7);
            hole[i] = i / 5 % 4;
        }

        rise[3] = double.NaN;
        return new(
            rows,
            new Dictionary<string, double[]>
            {
                ["rise_height_cm"] = rise, ["rise_height_cm_se"] = se, ["noise_pct"] = noise, ["noise_pct_se"] = se, ["coach_cm"] = coach,
                ["stirrup_length_cm"] = season.Exposure.Values, ["stirrup_hole"] = hole,
            },
            new Dictionary<string, string?[]>
            {
                ["rider"] = season.Riders, ["horse"] = season.Horses!, ["session_date"] = [.. hole.Select(h => $"day {h}")], ["term"] = [.. hole.Select(_ => "spring")],
                ["gait"] = [.. Enumerable.Range(0, rows).Select(i => i % 60 == 7 ? "walk" : "rising_trot")],
            });
    }
}
