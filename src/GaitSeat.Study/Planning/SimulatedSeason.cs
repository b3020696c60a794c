using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Linear;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Planning;

/// <summary>A season with known truth: <see cref="SeasonPlanSettings"/> drawn once.</summary>
public static class SimulatedSeason
{
    /// <summary>Exposure column of what is drawn.</summary>
    public const string Exposure = "stirrup_length_cm";

    private const double MeanLengthCm = 70;

    public static DoseData Draw(SeasonPlanSettings plan, Random random)
    {
        var rows = plan.Riders * plan.LengthsPerRider * plan.StridesPerLength;
        double[] outcome = new double[rows], length = new double[rows];
        string[] riders = new string[rows], horses = new string[rows], sessions = new string[rows];
        var horseEffects = Draw(Math.Max(1, plan.Horses), plan.Horses > 0 ? plan.HorseSd : 0, random);
        var row = 0;
        for (var r = 0; r < plan.Riders; r++)
        {
            var (first, second) = (Draw(random), Draw(random));
            var own = plan.RiderLengthSdCm * Draw(random);
            var level = plan.RiderSd * first + plan.BetweenRidersPerCm * own;
            var effect = plan.EffectPerCm + plan.EffectSdPerCm * (plan.Correlation * first + Math.Sqrt(1 - plan.Correlation * plan.Correlation) * second);
            var days = Draw(plan.LengthsPerRider, plan.SessionSd, random);
            for (var i = 0; i < plan.LengthsPerRider * plan.StridesPerLength; i++, row++)
            {
                var moved = plan.LengthStepCm * (i / plan.StridesPerLength - (plan.LengthsPerRider - 1) / 2.0);
                var horse = Horse(plan, r, random);
                (riders[row], horses[row], length[row], sessions[row]) = ($"rider {r:D4}", $"horse {horse:D4}", MeanLengthCm + own + moved, $"session {i / plan.StridesPerLength}");
                outcome[row] = level + effect * moved + days[i / plan.StridesPerLength] + horseEffects[horse] + plan.StrideSd * Draw(random);
            }
        }

        return new()
        {
            Outcome = outcome, Exposure = new DesignColumn(Exposure, length), Riders = riders,
            Horses = plan.Horses > 0 ? horses : null, Sessions = plan.SessionSd > 0 ? sessions : null,
        };
    }

    /// <summary>Riders share horses with their neighbours in the list, so that horses are crossed with riders.</summary>
    private static int Horse(SeasonPlanSettings plan, int rider, Random random) =>
        plan.Horses == 0 ? 0 : (rider + random.Next(plan.HorsesPerRider)) % plan.Horses;

    private static double[] Draw(int count, double sd, Random random) => [.. Enumerable.Range(0, count).Select(_ => sd * Draw(random))];

    private static double Draw(Random random) => Normal.Sample(random, 0, 1);
}
