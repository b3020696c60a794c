using CsCheck;
using GaitSeat.Study.Mixed;

namespace GaitSeat.Study.Tests.Mixed;

/// <summary>What must hold of any rows.</summary>
public sealed class LawTests
{
    /// <summary>Other units and another zero of the outcome and of the exposure change the numbers as units do, and nothing else.</summary>
    [Fact]
    public void OtherUnits_GiveTheSameModel() => Gen.Select(Gen.Int[1, 1000], Gen.Double[0.01, 100], Gen.Double[-50, 50], Gen.Double[0.01, 100], Gen.Double[-50, 50]).Sample(
        (seed, outcomeUnit, outcomeZero, unit, zero) =>
        {
            var data = MadeRows.Of(seed);
            var moved = data.Fixed[1] with { Values = [.. data.Fixed[1].Values.Select(v => unit * (v + zero))] };
            var other = data with
            {
                Outcome = [.. data.Outcome.Select(y => outcomeUnit * (y + outcomeZero))], Fixed = [data.Fixed[0], moved],
                Random = [new(data.Random[0].Groups, [data.Fixed[0], moved]), data.Random[1]],
            };
            var (a, b) = (MixedModel.Fit(data), MixedModel.Fit(other));
            Close(a.Fixed[1].Estimate, b.Fixed[1].Estimate * unit / outcomeUnit);
            Close(a.Fixed[1].StandardError, b.Fixed[1].StandardError * unit / outcomeUnit);
            Close(a.Random[0].StandardDeviations[1], b.Random[0].StandardDeviations[1] * unit / outcomeUnit);
            Close(a.ResidualSd, b.ResidualSd / outcomeUnit);
        },
        seed: "0N0XIzNsQ0O2", iter: 25, threads: 1);

    [Fact]
    public void OrderOfTheRows_DoesNotMatter() => Gen.Int[1, 1000].Sample(
        seed =>
        {
            var data = MadeRows.Of(seed);
            var order = Enumerable.Range(0, data.Rows).ToArray();
            new Random(seed).Shuffle(order);
            var (a, b) = (MixedModel.Fit(data), MixedModel.Fit(Reordered(data, order)));
            Close(a.CriterionValue, b.CriterionValue);
            Close(a.Fixed[1].Estimate, b.Fixed[1].Estimate);
            Close(a.Random[1].StandardDeviations[0], b.Random[1].StandardDeviations[0]);
        },
        seed: "0N0XIzNsQ0O2", iter: 25, threads: 1);

    /// <summary>A weight of two is what a measurement twice as precise deserves: equal weights of any size change σ and nothing else.</summary>
    [Fact]
    public void EqualWeights_ChangeOnlyTheResidual()
    {
        var data = MadeRows.Of(8);
        var (a, b) = (MixedModel.Fit(data), MixedModel.Fit(data with { Weights = [.. data.Outcome.Select(_ => 4.0)] }));
        Close(a.Fixed[1].StandardError, b.Fixed[1].StandardError);
        Close(a.Random[0].StandardDeviations[0], b.Random[0].StandardDeviations[0]);
        Close(2 * a.ResidualSd, b.ResidualSd);
    }

    /// <summary>Equal known errors are part of the residual: together they are what the model without them finds.</summary>
    [Fact]
    public void EqualMeasurementErrors_AreTakenOutOfTheResidual()
    {
        var data = MadeRows.Of(8);
        var (a, b) = (MixedModel.Fit(data), MixedModel.Fit(data with { MeasurementVariance = [.. data.Outcome.Select(_ => 0.25)] }));
        Close(a.CriterionValue, b.CriterionValue);
        Close(a.ResidualSd, Math.Sqrt(b.ResidualSd * b.ResidualSd + 0.25));
        Assert.False(b.ResidualAtBound);
    }

    [Fact]
    public void MeasurementErrorsAboveTheResidual_AreSaidToExplainIt() =>
        Assert.True(MixedModel.Fit(MadeRows.Of(8) with { MeasurementVariance = [.. Enumerable.Repeat(4.0, 180)] }).ResidualAtBound);

    private static MixedData Reordered(MixedData data, int[] order) => data with
    {
        Outcome = [.. order.Select(i => data.Outcome[i])], Fixed = [data.Fixed[0], data.Fixed[1] with { Values = [.. order.Select(i => data.Fixed[1].Values[i])] }],
        Random =
        [
            .. data.Random.Select(t => new RandomTerm(
                t.Groups with { LevelOf = [.. order.Select(i => t.Groups.LevelOf[i])] }, [.. t.Columns.Select(c => c with { Values = [.. order.Select(i => c.Values[i])] })])),
        ],
    };

    private static void Close(double expected, double found) => Assert.True(Math.Abs(expected - found) <= 1e-5 * Math.Max(1e-3, Math.Abs(expected)), $"{expected:R} and {found:R}");
}
