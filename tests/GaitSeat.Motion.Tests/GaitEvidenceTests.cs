using GaitSeat.Model;
using GaitSeat.Motion.Gaits;

namespace GaitSeat.Motion.Tests;

/// <summary>One window at a time: which gait has the most evidence.</summary>
public sealed class GaitEvidenceTests
{
    private static readonly GaitEvidence _evidence = new(new());

    private static Gait Best(double bounceHz, double bouncePct, double speedLegsPerSecond, double periodicity = 0.95)
    {
        var evidence = _evidence.Of(new(0, 1.4, bounceHz, bouncePct, periodicity, HalfRatio: 0.1, RisePct: 0, RiseSe: 0.2, speedLegsPerSecond));
        return GaitEvidence.Gaits.MaxBy(g => evidence[(int)g]);
    }

    [Fact]
    public void DownASlope_ShownSlowerThanLife_IsAWalk() => Assert.Equal(Gait.Walk, Best(bounceHz: 1.06, bouncePct: 10, speedLegsPerSecond: 0.49));

    [Fact]
    public void StandingWhileTheCameraDrifts_IsNoCanter() => Assert.NotEqual(Gait.Canter, Best(bounceHz: 1.06, bouncePct: 10, speedLegsPerSecond: 0.05));

    [Fact]
    public void Bouncing_OverGroundThatWasNotFollowed_IsNoHalt() => Assert.Equal(Gait.SittingTrot, Best(bounceHz: 2.7, bouncePct: 5, speedLegsPerSecond: 0.05));

    [Fact]
    public void Standing_IsAHalt() => Assert.Equal(Gait.Halt, Best(bounceHz: 2, bouncePct: 0.2, speedLegsPerSecond: 0.02, periodicity: 0.2));

    [Theory]
    [InlineData(1.8, 2, 2, Gait.Walk)]
    [InlineData(1.7, 6, 6, Gait.Canter)]
    [InlineData(2.7, 5, 4.5, Gait.SittingTrot)]
    public void UsualBeat_HasItsGait(double bounceHz, double bouncePct, double speed, Gait gait) => Assert.Equal(gait, Best(bounceHz, bouncePct, speed));
}
