using CsCheck;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests;

public sealed class ProbabilityTests
{
    private static readonly RuleSettings TellAll = new() { MinimumProbability = 0.5, MinimumStrides = 1 };

    /// <summary>Normal distribution function at whole standard errors; tables of the normal distribution, Abramowitz and Stegun 26.2.</summary>
    [Theory]
    [InlineData(50, 0.5)]
    [InlineData(51, 0.841344746)]
    [InlineData(52, 0.977249868)]
    [InlineData(53, 0.998650102)]
    public void OneStride_ProbabilityIsTheNormalTail(double thigh, double expected)
    {
        var strides = Rides.Strides(1, (m, _) => m[StrideMeasure.ThighAngleSit] = new(thigh + 1e-9, 1));
        var finding = Assert.Single(Rides.Find(strides, TellAll));
        Assert.Equal(expected, finding.ProbabilityPastThreshold, 6);
        Assert.Equal(50, finding.Threshold);
        Assert.Equal(1, finding.Value.StandardError);
    }

    [Fact]
    public void SeveralStrides_ErrorIsMedianFloorPlusSpread()
    {
        double[] thighs = [50, 52, 54, 56];
        double[] errors = [0.5, 1, 1.5, 6];
        var strides = Rides.Strides(4, (m, i) => m[StrideMeasure.ThighAngleSit] = new(thighs[i], errors[i]));
        var finding = Assert.Single(Rides.Find(strides, TellAll));

        // Mean 53; sample variance of 50, 52, 54, 56 is 20/3; median error 1.25.
        Assert.Equal(53, finding.Value.Value, 12);
        Assert.Equal(Math.Sqrt(1.25 * 1.25 + 20.0 / 3 / 4), finding.Value.StandardError, 12);
        Assert.Equal([2, 3, 4], finding.StrideNumbers);
        Assert.Equal(Rides.StrideSeconds, finding.StartSeconds, 12);
    }

    [Fact]
    public void TwoConditions_ProbabilityIsTheLowerBoundOfBoth()
    {
        // Pitch one standard error past its limit (0.841), foot two past (0.977): both at once at least 0.841 + 0.977 - 1.
        var strides = Rides.Strides(4, (m, _) =>
        {
            m[StrideMeasure.FootPitchSit] = new(22, 2);
            Rides.Length(m, StrideMeasure.StirrupDriftOffsetCm, StrideMeasure.StirrupDriftOffsetPctLeg, 20, 1);
        });
        var finding = Assert.Single(Rides.Find(strides, TellAll));
        Assert.Equal(Fault.ForcedHeel, finding.Fault);
        Assert.Equal(0.841344746 + 0.977249868 - 1, finding.ProbabilityPastThreshold, 6);
    }

    [Fact]
    public void MoreStridesOfTheSame_NeverLessSure() =>
        Gen.Select(Gen.Double[50.5, 65], Gen.Double[0.1, 5], Gen.Int[1, 20], Gen.Int[1, 20]).Sample(
            (thigh, error, few, more) => Probability(thigh, error, few + more) >= Probability(thigh, error, few) - 1e-12,
            seed: "0000KGXO6s_4", iter: 300);

    [Fact]
    public void LargerError_NearerToHalf() =>
        Gen.Select(Gen.Double[50.5, 60], Gen.Double[0.2, 4], Gen.Double[1.05, 4]).Sample(
            (thigh, error, factor) => Probability(thigh, error * factor, 5) is var wide && wide < Probability(thigh, error, 5) + 1e-12 && wide > 0.5,
            seed: "0000KGXO6s_4", iter: 300);

    [Fact]
    public void SameDistancePastEitherSide_SameProbability() =>
        Gen.Select(Gen.Double[0.01, 8], Gen.Double[0.2, 4]).Sample(
            (past, error) =>
            {
                var ahead = Lean(20 + past, error, new() { MinimumProbability = 0.5, MinimumStrides = 1 });
                var behind = Lean(20 + past, error, new() { MinimumProbability = 0.5, MinimumStrides = 1, BehindTheMovement = new() { TrunkLeanDeg = 20 + 2 * past } });
                return Math.Abs(ahead.Single(f => f.Fault == Fault.AheadOfTheMovement).ProbabilityPastThreshold
                    - behind.Single(f => f.Fault == Fault.BehindTheMovement).ProbabilityPastThreshold) < 1e-9;
            },
            seed: "0000KGXO6s_4", iter: 200);

    private static IReadOnlyList<Finding> Lean(double lean, double error, RuleSettings settings) =>
        Rides.Find(Rides.Strides(4, (m, _) => m[StrideMeasure.TrunkLeanSit] = new(lean, error)), settings);

    /// <summary>Held against the limit of 50 alone, "clearly short" out of reach.</summary>
    private static double Probability(double thigh, double error, int strides) =>
        Rides.Find(
            Rides.Strides(strides, (m, _) => m[StrideMeasure.ThighAngleSit] = new(thigh, error)),
            TellAll with { StirrupShort = new() { ClearlyShortDeg = 90 } }).Single(f => f.Fault == Fault.StirrupShort).ProbabilityPastThreshold;
}
