using GaitSeat.Model;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

public sealed class RiderChoiceTests
{
    private static readonly ScoutSettings Settings = new();

    private static Detection Person(double x, double y, double w, double h, double score = 0.6) => new(DetectedKind.Person, new(x, y, w, h), score);

    private static Detection Horse(double x, double y, double w, double h, double score = 0.7) => new(DetectedKind.Horse, new(x, y, w, h), score);

    // A rider 260 px tall on a horse 480 px long that goes right by 20 px a look.
    private static Detection RiderAt(int look) => Person(600 + 20 * look, 160, 95, 260);

    private static Detection HorseAt(int look) => Horse(420 + 20 * look, 240, 480, 350);

    private static RiderPath Choose(int looks, Func<int, Detection[]> seen) =>
        RiderChoice.Choose([.. Enumerable.Range(0, looks).Select(i => new Look(i * 0.2, seen(i)))], 1280, 720, Settings);

    private static void AssertFollowsRider(RiderPath path, int looks)
    {
        Assert.Null(path.MissingReason);
        for (var i = 0; i < looks; i++)
        {
            var box = Assert.NotNull(path.RiderAt(i * 0.2));
            Assert.True(box.Overlap(RiderAt(i).Box) > 0.8, $"look {i}: {box}");
        }
    }

    [Fact]
    public void HelperOnTheGroundLargerAndSurer_RiderIsChosen() =>
        AssertFollowsRider(Choose(20, i => [RiderAt(i), HorseAt(i), Person(860 + 20 * i, 180, 140, 410, 0.9)]), 20);

    // Further off, so that the helper's feet stand no lower in the picture than a rider's; hidden while the rider is in front.
    [Fact]
    public void HelperStandingWhileHorsePasses_RiderIsChosen()
    {
        AssertFollowsRider(Choose(20, i => RiderAt(i).Box.Overlap(Helper.Box) > 0 ? [RiderAt(i), HorseAt(i)] : [RiderAt(i), HorseAt(i), Helper]), 20);
        Assert.True(Mount.Holds(Helper.Box, HorseAt(12).Box, 720));
    }

    private static readonly Detection Helper = Person(900, 140, 120, 280, 0.9);

    [Fact]
    public void TinyFalsePersonSeenFirst_RiderIsChosen() =>
        AssertFollowsRider(Choose(20, i => i == 0 ? [Person(640, 300, 8, 18, 0.9), HorseAt(0), RiderAt(0)] : [Person(640, 300, 8, 18, 0.9), RiderAt(i), HorseAt(i)]), 20);

    [Fact]
    public void HorseSeenInTwoLooksOfNine_RiderIsChosenOverBystander()
    {
        var path = Choose(27, i => i % 9 is 2 or 6 ? [RiderAt(i), HorseAt(i), Person(100, 300, 120, 300, 0.9)] : [RiderAt(i), Person(100, 300, 120, 300, 0.9)]);
        AssertFollowsRider(path, 27);
        Assert.Equal(6 / 27.0, path.HorseSeenShare, 9);
        Assert.NotNull(path.HorseAt(13 * 0.2));
    }

    [Fact]
    public void TwoRiders_TheLargerWinsAndTheResultSaysSo()
    {
        var path = Choose(20, i => [RiderAt(i), HorseAt(i), Person(80 + 20 * i, 200, 60, 170), Horse(10 + 20 * i, 250, 300, 220)]);
        AssertFollowsRider(path, 20);
        Assert.Contains(RiderChoice.TwoRiders, path.Notes);
    }

    [Fact]
    public void OneRider_NoNoteOfASecond() => Assert.Empty(Choose(20, i => [RiderAt(i), HorseAt(i)]).Notes);

    [Fact]
    public void HalfBodyBoxInsideTheWholeOne_IsNoSecondRider() =>
        Assert.Empty(Choose(20, i => [RiderAt(i), HorseAt(i), Person(602 + 20 * i, 162, 88, 165, 0.5)]).Notes);

    [Fact]
    public void BoxesThatLoseTheLegsNowAndThen_KeepTheirFullHeight()
    {
        var path = Choose(20, i => [i % 3 == 1 ? Person(600 + 20 * i, 160, 95, 170) : RiderAt(i), HorseAt(i)]);
        for (var i = 0; i < 20; i++) Assert.InRange(path.RiderAt(i * 0.2)!.Value.Height, 255, 265);
    }

    [Fact]
    public void BouncingRider_PathDoesNotBounce()
    {
        var path = Choose(30, i => [RiderAt(i) with { Box = new(600 + 20 * i, 160 + (i % 2 == 0 ? 12 : -12), 95, 260) }, HorseAt(i)]);
        for (var i = 3; i < 27; i++) Assert.InRange(path.RiderAt(i * 0.2)!.Value.Y, 155, 165);
    }

    [Fact]
    public void RiderUnseenForASecond_IsOneSpanWithBoxesBetween()
    {
        var path = Choose(20, i => i is > 7 and < 12 ? [] : [RiderAt(i), HorseAt(i)]);
        Assert.Single(path.Spans);
        Assert.Equal(600 + 20 * 9.5, path.RiderAt(1.9)!.Value.X, 0.5);
        Assert.Equal(0.8, path.RiderSeenShare, 9);
    }

    [Fact]
    public void RiderLeavesAndAnotherShotFollows_TwoSpansWithNothingBetween()
    {
        var path = Choose(40, i => i is > 12 and < 27 ? [] : [RiderAt(i % 20), HorseAt(i % 20)]);
        Assert.Equal(2, path.Spans.Count);
        Assert.Null(path.RiderAt(4.0));
        Assert.NotNull(path.RiderAt(1.0));
        Assert.NotNull(path.RiderAt(6.0));
    }

    [Theory]
    [InlineData("no_frames")]
    [InlineData("no_rider")]
    [InlineData("no_horse")]
    public void NobodyRides_EmptyPathNamesTheReason(string reason)
    {
        var path = reason switch
        {
            "no_frames" => Choose(0, _ => []),
            "no_rider" => Choose(5, i => [HorseAt(i)]),
            _ => Choose(5, i => [RiderAt(i)]),
        };
        Assert.Equal(reason, path.MissingReason);
        Assert.Empty(path.Spans);
        Assert.Null(path.RiderAt(0.2));
    }

    [Fact]
    public void PersonBesideALooseHorse_IsNoRider() =>
        Assert.Equal("no_rider", Choose(10, i => [HorseAt(i), Person(960 + 20 * i, 180, 140, 410)]).MissingReason);

    // The picture ends at 720: the horse's legs are cut off just below the rider's foot.
    [Fact]
    public void HorseCutOffBelow_RiderIsStillFoundAndTheHelperIsNot()
    {
        Detection rider = Person(500, 330, 140, 380), horse = Horse(200, 440, 800, 280);
        var path = Choose(10, _ => [rider, horse, Person(900, 480, 150, 240, 0.9)]);
        Assert.True(path.RiderAt(1.0)!.Value.Overlap(rider.Box) > 0.9);
        Assert.Equal("no_rider", Choose(10, _ => [horse, Person(900, 480, 150, 240, 0.9)]).MissingReason);
    }
}
