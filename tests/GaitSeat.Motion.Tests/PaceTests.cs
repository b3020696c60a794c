using GaitSeat.Model;
using GaitSeat.Motion.Gaits;

namespace GaitSeat.Motion.Tests;

/// <summary>What pace adds to beat and bounce.</summary>
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
    [InlineData(6.0, Gait.Canter)]
    [InlineData(0.2, Gait.Unknown)]
    [InlineData(double.NaN, Gait.Unknown)]
    public void NoBeat_IsTheGaitOfThePaceOrNone(double speedLegsPerSecond, Gait said) => Assert.Equal(said, Said(Drifting(speedLegsPerSecond)));

    [Fact]
    public void LargeBounceAtACantersBeat_IsNoWalk() => Assert.NotEqual(Gait.Walk, Said(Drifting(2, bounceHz: 1.7)));

    /// <summary>Beat and pace of a horse's walk and canter with like bounce; a small pony's quick walk, its trot, and a trot of which no speed is known.</summary>
    [Theory]
    [InlineData(1.8, 3.6, 2.0, Gait.Walk)]
    [InlineData(1.8, 3.6, 4.5, Gait.Canter)]
    [InlineData(2.4, 3.0, 1.2, Gait.Walk)]
    [InlineData(2.9, 3.0, 3.0, Gait.SittingTrot)]
    [InlineData(2.7, 4.0, double.NaN, Gait.SittingTrot)]
    public void Beat_IsReadWithThePace(double bounceHz, double bouncePct, double speedLegsPerSecond, Gait said) =>
        Assert.Equal(said, Said(new(0, 2.4, bounceHz, bouncePct, 0.95, 0.1, 0.1, 0.2, speedLegsPerSecond)));
}
