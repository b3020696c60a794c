using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

public sealed class GlancesTests
{
    private static readonly ScoutSettings Settings = new();

    private static Look Glance(double time, double score = 0) =>
        new(time, score > 0 ? [new(DetectedKind.Horse, new(100, 100, 200, 150), score)] : []);

    /// <summary>A glance a second over a minute; somebody shows in those named.</summary>
    private static Look[] Minute(params int[] seen) => [.. Enumerable.Range(0, 61).Select(s => Glance(s, seen.Contains(s) ? 0.5 : 0))];

    private static (double, double)[] Worth(IReadOnlyList<Look> glances) => [.. Glances.WorthALook(glances, Settings).Select(s => (s.StartSeconds, s.EndSeconds))];

    [Fact]
    public void NobodyInAnyGlance_OnlyTheEndIsLookedAt() => Assert.Equal([(60, double.PositiveInfinity)], Worth(Minute()));

    [Fact]
    public void SomebodyInSomeGlances_ThoseAndASecondOnEitherSide() =>
        Assert.Equal([(9, 13), (29, 31), (60, double.PositiveInfinity)], Worth(Minute(10, 11, 12, 30)));

    [Fact]
    public void SomebodyAtTheStart_LookedAtFromTheStart() => Assert.Equal([(0, 1), (60, double.PositiveInfinity)], Worth(Minute(0)));

    [Fact]
    public void SomebodyAtTheEnd_OneStretchToTheEnd() => Assert.Equal([(58, double.PositiveInfinity)], Worth(Minute(59)));

    [Fact]
    public void OneGlanceThatMissesTheRider_DoesNotTearTheRide() => Assert.Equal([(9, 15), (60, double.PositiveInfinity)], Worth(Minute(10, 11, 13, 14)));

    [Fact]
    public void TwoGlancesWithNobodyBetweenRides_AreStillTooShortALeaveOut() =>
        // 11 to 12 shows nobody at either end, but is over too soon to stop for.
        Assert.Equal([(9, 14), (60, double.PositiveInfinity)], Worth(Minute(10, 13)));

    [Fact]
    public void KeyFramesTooFarApart_EverythingIsLookedAt()
    {
        var sparse = Enumerable.Range(0, 20).Select(i => Glance(i * (Settings.GlanceApartMaximumSeconds + 0.01))).ToArray();
        Assert.Equal([(0, double.PositiveInfinity)], Worth(sparse));
    }

    [Fact]
    public void OneKeyFrameMissing_TheHoleIsLookedAt() =>
        Assert.Equal([(19, 21), (60, double.PositiveInfinity)], Worth([.. Minute().Where(g => g.TimeSeconds is not 20)]));

    [Fact]
    public void FirstKeyFrameAfterTheStart_TheTimeBeforeItIsLookedAt() =>
        Assert.Equal([(0, 5), (60, double.PositiveInfinity)], Worth([.. Minute().Where(g => g.TimeSeconds >= 5)]));

    [Fact]
    public void NoGlance_EverythingIsLookedAt() => Assert.Equal([(0, double.PositiveInfinity)], Worth([]));

    [Fact]
    public void FainterThanTheLeastScore_IsNobody()
    {
        var glances = Minute();
        glances[30] = Glance(30, Settings.GlanceScoreMinimum - 0.01);
        Assert.Single(Worth(glances));
        glances[30] = Glance(30, Settings.GlanceScoreMinimum);
        Assert.Equal(2, Worth(glances).Length);
    }
}
