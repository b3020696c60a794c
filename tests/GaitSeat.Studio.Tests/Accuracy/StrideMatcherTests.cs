using GaitSeat.Model;
using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Studio.Tests.Accuracy;

public sealed class StrideMatcherTests
{
    private static readonly TruthSpell[] TrotThenWalk = [new(0, 4, "rising"), new(4.5, 8, "walk")];

    [Theory]
    [InlineData(0.0, 1, 0, 0)]
    [InlineData(0.19, 1, 0, 0)]
    [InlineData(0.21, 0, 1, 1)]
    public void Stride_IsFoundWithinAQuarterOfItsLength(double late, int found, int missed, int invented)
    {
        var match = StrideMatcher.Match(Made.Truth(4, [Made.TrueStride(1)]), [Made.Stride(1 + late)]);

        Assert.Equal((found, missed, invented), (match.Pairs.Count, match.Missed.Count, match.Invented.Count));
    }

    /// <summary>The file holds the horse's strides of every gait; only those of the rising trot count.</summary>
    [Fact]
    public void StridesOfAnotherGait_AreNeitherMissedNorFound()
    {
        var truth = Made.Truth(8, [Made.TrueStride(1), Made.TrueStride(5), Made.TrueStride(6)], TrotThenWalk);

        var match = StrideMatcher.Match(truth, [Made.Stride(1), Made.Stride(5)]);

        Assert.Equal(1, Assert.Single(match.Pairs).Truth.SitS);
        Assert.Empty(match.Missed);
        Assert.Equal(5, Assert.Single(match.Invented).StartSeconds);
    }

    [Fact]
    public void TrueStride_IsGivenOnce() => Assert.Single(StrideMatcher.Match(Made.Truth(4, [Made.TrueStride(1)]), [Made.Stride(1), Made.Stride(1.05)]).Invented);

    /// <summary>A stride and a half of the horse between two rises may be cut in two ways: both are passed over, what lies beside is not.</summary>
    [Fact]
    public void DoubleBounce_IsPassedOver()
    {
        var truth = Made.Truth(6, [Made.TrueStride(0.5), Made.TrueStride(1.3, 1.2, fault: "double-bounce"), Made.TrueStride(2.5, fault: "double-bounce"), Made.TrueStride(3.3)]);

        var match = StrideMatcher.Match(truth, [Made.Stride(0.5), Made.Stride(1.3, 0.8), Made.Stride(2.1, 1.2), Made.Stride(4.6)]);

        Assert.Equal(0.5, Assert.Single(match.Pairs).Truth.SitS);
        Assert.Equal(3.3, Assert.Single(match.Missed).SitS);
        Assert.Equal(4.6, Assert.Single(match.Invented).StartSeconds);
    }

    [Fact]
    public void StrideWithTheRiderPartlyOut_IsNotMissed() =>
        Assert.Empty(StrideMatcher.Match(Made.Truth(4, [Made.TrueStride(1)]) with { LastInFrame = 40 }, []).Missed);
}
