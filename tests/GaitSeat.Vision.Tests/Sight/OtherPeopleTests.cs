using GaitSeat.Model;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

/// <summary>A rider goes right by 20 px a look, five looks a second; others stand, walk, come and go.</summary>
public sealed class OtherPeopleTests
{
    private const double Step = 0.2;

    private static readonly BoxPx Helper = new(100, 200, 80, 300);

    private static Detection Person(BoxPx box, double score = 0.6) => new(DetectedKind.Person, box, score);

    private static Detection Rider(int look) => Person(new(600 + 20 * look, 160, 95, 260));

    private static Detection Horse(int look) => new(DetectedKind.Horse, new(420 + 20 * look, 240, 480, 350), 0.7);

    private static RiderPath Choose(int looks, Func<int, Detection[]> others, Func<int, bool>? ridden = null) =>
        RiderChoice.Choose(
            [.. Enumerable.Range(0, looks).Select(i => new Look(i * Step, ridden?.Invoke(i) ?? true ? [Rider(i), Horse(i), .. others(i)] : others(i)))],
            1280, 720, new());

    private static bool Holds(BoxPx box, BoxPx person) =>
        box.X <= person.X && box.Y <= person.Y && box.Right >= person.Right && box.Bottom >= person.Bottom;

    [Theory]
    [InlineData(0.6)]
    [InlineData(0.4)]
    public void HelperStanding_IsHeldAtEveryMoment(double score)
    {
        var path = Choose(10, _ => [Person(Helper, score)]);
        for (var t = 0.0; t < 1.8; t += 0.03) Assert.Contains(path.OthersAt(t), b => Holds(b, Helper));
    }

    [Fact]
    public void OnlyTheRiderAndTheirHalfBody_NobodyElse()
    {
        var path = Choose(10, i => [Person(new(602 + 20 * i, 165, 88, 165), 0.5), Person(new(596 + 20 * i, 240, 90, 180), 0.3)]);
        Assert.NotNull(path.RiderAt(0.9));
        for (var t = 0.0; t < 1.8; t += 0.05) Assert.Empty(path.OthersAt(t));
    }

    [Fact]
    public void HorseAndRiderTakenForAPerson_NobodyElse()
    {
        var path = Choose(10, i => [Person(new(430 + 20 * i, 165, 460, 420), 0.3), Person(new(415 + 20 * i, 250, 480, 330), 0.25)]);
        Assert.NotNull(path.RiderAt(0.9));
        for (var t = 0.0; t < 1.8; t += 0.05) Assert.Empty(path.OthersAt(t));
    }

    [Fact]
    public void HelperAtTheHorsesHead_IsAnother()
    {
        static BoxPx At(int i) => new(860 + 20 * i, 180, 140, 410);
        var path = Choose(10, i => [Person(At(i), 0.9)]);
        for (var i = 0; i < 10; i++) Assert.Contains(path.OthersAt(i * Step), b => Holds(b, At(i)));
    }

    [Fact]
    public void HelperPannedAcross_IsCoveredBetweenTheLooks()
    {
        static BoxPx At(double look) => new(900 - 90 * look, 200, 80, 300);
        var path = Choose(8, i => [Person(At(i), 0.4)]);
        for (var look = 0.0; look <= 7; look += 0.1) Assert.Contains(path.OthersAt(look * Step), b => Holds(b, At(look)));
    }

    [Fact]
    public void HelperMissedInTwoLooks_IsCoveredThere()
    {
        var path = Choose(10, i => i is 4 or 5 ? [] : [Person(Helper)]);
        for (var t = 0.0; t < 1.8; t += 0.05) Assert.Contains(path.OthersAt(t), b => Holds(b, Helper));
    }

    [Fact]
    public void PersonSeenOnce_IsHeldOneLookEitherWayAndNoLonger()
    {
        var path = Choose(10, i => i == 5 ? [Person(Helper, 0.4)] : []);
        foreach (var t in (double[])[0.81, 0.9, 1.0, 1.1, 1.19]) Assert.Contains(path.OthersAt(t), b => Holds(b, Helper));
        foreach (var t in (double[])[0.7, 1.3]) Assert.Empty(path.OthersAt(t));
    }

    [Fact]
    public void FaintPerson_BelowTheSettingIsNotBelieved() =>
        Assert.Empty(Choose(10, i => i == 5 ? [Person(Helper, new ScoutSettings().OtherScoreMinimum - 0.05)] : []).OthersAt(1.0));

    // The detector's joining takes the child for a second box of the grown-up behind.
    [Fact]
    public void ChildInFrontOfAGrownUp_BothAreOthers()
    {
        var child = new BoxPx(110, 350, 60, 150);
        var path = Choose(10, _ => [Person(Helper, 0.8), Person(child, 0.5)]);
        Assert.Contains(path.OthersAt(1.0), b => Holds(b, Helper));
        Assert.Contains(path.OthersAt(1.0), b => Holds(b, child) && !Holds(b, Helper));
    }

    [Fact]
    public void RiderGone_EverybodyIsAnother()
    {
        var dismounted = new BoxPx(1000, 200, 100, 280);
        var path = Choose(40, i => i < 20 ? [] : [Person(dismounted), Person(Helper)], i => i < 12);
        Assert.Null(path.RiderAt(6.0));
        Assert.Contains(path.OthersAt(6.0), b => Holds(b, dismounted));
        Assert.Contains(path.OthersAt(6.0), b => Holds(b, Helper));
        Assert.Empty(path.OthersAt(1.0));
    }

    [Fact]
    public void SecondRider_IsAnother()
    {
        static BoxPx At(int i) => new(80 + 20 * i, 200, 60, 170);
        var path = Choose(20, i => [Person(At(i)), new(DetectedKind.Horse, new(10 + 20 * i, 250, 300, 220), 0.7)]);
        Assert.Contains(RiderChoice.TwoRiders, path.Notes);
        for (var i = 0; i < 20; i++) Assert.Contains(path.OthersAt(i * Step), b => Holds(b, At(i)));
    }

    [Fact]
    public void NoRiderAtAll_EverybodyIsAnother() =>
        Assert.Contains(Choose(5, _ => [Person(Helper)], _ => false).OthersAt(0.4), b => Holds(b, Helper));

    // Two looks a second in a clip that has no more frames: held to the next look, not only for a fifth of a second.
    [Fact]
    public void LooksFurtherApartThanAskedFor_AreBridged()
    {
        var path = RiderChoice.Choose([.. Enumerable.Range(0, 6).Select(i => new Look(i * 0.5, i == 3 ? [Rider(i), Horse(i), Person(Helper)] : [Rider(i), Horse(i)]))], 1280, 720, new());
        foreach (var t in (double[])[1.05, 1.5, 1.95]) Assert.Contains(path.OthersAt(t), b => Holds(b, Helper));
    }
}
