using GaitSeat.Model;
using GaitSeat.Motion.Gaits;

namespace GaitSeat.Motion.Tests;

/// <summary>What is said of a window in which no beat is seen.</summary>
public sealed class PaceTests
{
    /// <summary>Half as periodic as a gait must be, slower than any gait's beat, the bounce as large as a canter's: drift.</summary>
    private static WindowEvidence Drifting(double speedLegsPerSecond, double bounceHz = 1.06) =>
        new(0, 2.4, bounceHz, 8, 0.25, 2, 0.2, 0.3, speedLegsPerSecond);

    private static Gait Said(WindowEvidence window)
    {
        var evidence = new GaitEvidence(new GaitSettings()).Of(window);
        return (Gait)Array.IndexOf(evidence, evidence.Max());
    }

    [Theory]
    [InlineData(0.8, Gait.Walk)]
    [InlineData(2.0, Gait.Walk)]
    [InlineData(-2.0, Gait.Walk)]
    [InlineData(4.0, Gait.Unknown)]
    [InlineData(0.2, Gait.Unknown)]
    [InlineData(double.NaN, Gait.Unknown)]
    public void NoBeat_IsAWalkAtAWalksPaceOnly(double speedLegsPerSecond, Gait said) => Assert.Equal(said, Said(Drifting(speedLegsPerSecond)));

    [Fact]
    public void LargeBounceAtACantersBeat_IsNoWalk() => Assert.NotEqual(Gait.Walk, Said(Drifting(2, bounceHz: 1.7)));

    [Fact]
    public void TrotsBeatAtAWalksPace_IsATrot() =>
        Assert.Equal(Gait.SittingTrot, Said(new(0, 2.4, 2.7, 4, 0.9, 0.1, 0.1, 0.2, 2)));
}
