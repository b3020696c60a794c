using GaitSeat.Faults.Evaluation;

namespace GaitSeat.Faults.Tests.Evaluation;

public sealed class RankingTests
{
    /// <summary>Ratings 1..5 of 58 normal and 51 abnormal tomograms; area .893 (Hanley and McNeil 1982, Radiology 143:29-36; .8931711 recomputed).</summary>
    [Fact]
    public void RocArea_IsThePublishedOne()
    {
        int[] normal = [33, 6, 6, 11, 2], abnormal = [3, 2, 2, 11, 33];
        var scores = Enumerable.Range(0, 5).SelectMany(r => Enumerable.Repeat(r + 1.0, normal[r] + abnormal[r])).ToArray();
        var there = Enumerable.Range(0, 5).SelectMany(r => Enumerable.Repeat(false, normal[r]).Concat(Enumerable.Repeat(true, abnormal[r]))).ToArray();
        Assert.Equal(0.8931711, new Ranking(scores, there).RocArea(), 7);
    }

    /// <summary>By hand: hits at ranks 1, 3 and 4 of 5: (1/1 + 2/3 + 3/4) / 3.</summary>
    [Fact]
    public void AveragePrecision_IsTheOneByHand() =>
        Assert.Equal((1 + 2 / 3.0 + 3 / 4.0) / 3, new Ranking([0.9, 0.8, 0.7, 0.6, 0.5], [true, false, true, true, false]).AveragePrecision(), 12);

    [Fact]
    public void EqualScores_AreOneStepWhateverTheirOrder()
    {
        var forth = new Ranking([0.5, 0.5, 0.5, 0.5], [true, false, false, false]);
        var back = new Ranking([0.5, 0.5, 0.5, 0.5], [false, false, false, true]);
        Assert.Equal([0.25, 0.25, 0.5, 0.5, 0.25], [forth.AveragePrecision(), back.AveragePrecision(), forth.RocArea(), back.RocArea(), forth.PrecisionAt(2)]);
    }

    [Fact]
    public void Weights_CountAsRepeatedSpells()
    {
        var weighted = new Ranking([0.9, 0.6, 0.4], [true, false, true]);
        var repeated = new Ranking([0.9, 0.9, 0.4, 0.4, 0.4], [true, true, true, true, true]);
        var mixed = new Ranking([0.9, 0.9, 0.6, 0.4], [true, true, false, true]);
        Assert.Equal(mixed.AveragePrecision(), weighted.AveragePrecision([2, 1, 1]), 12);
        Assert.Equal(mixed.RocArea(), weighted.RocArea([2, 1, 1]), 12);
        Assert.Equal(repeated.AveragePrecision(), weighted.AveragePrecision([2, 0, 3]), 12);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 0.5)]
    [InlineData(5, 0.6)]
    [InlineData(9, 0.6)]
    public void PrecisionAtBudget_IsTheShareAmongTheFirst(int budget, double expected) =>
        Assert.Equal(expected, new Ranking([0.9, 0.8, 0.7, 0.6, 0.5], [true, false, true, true, false]).PrecisionAt(budget), 12);

    [Fact]
    public void OneAnswerOnly_GivesNoFigure()
    {
        Assert.True(double.IsNaN(new Ranking([0.1, 0.2], [false, false]).AveragePrecision()));
        Assert.True(double.IsNaN(new Ranking([0.1, 0.2], [true, true]).RocArea()));
    }

    [Fact]
    public void Curve_EndsWithEverythingFlagged()
    {
        var curve = new Ranking([0.9, 0.8, 0.7, 0.6], [true, false, true, false]).Curve();
        Assert.Equal(new CurvePoint(0.6, 0.5, 1, 1), curve[^1]);
        Assert.Equal(new CurvePoint(0.9, 1, 0.5, 0), curve[0]);
    }
}
