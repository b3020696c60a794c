using GaitSeat.Model;
using GaitSeat.Studio.Accuracy.Marks;

namespace GaitSeat.Studio.Tests.Marks;

public sealed class MarkerRepeatTests
{
    [Fact]
    public void Sem_IsTheRootOfHalfTheMeanSquareOfDifferences()
    {
        Assert.Equal(Math.Sqrt((9 + 1) / 2.0 / 2), MarkerRepeat.Sem([3, -1]), 12);
        Assert.True(double.IsNaN(MarkerRepeat.Sem([])));
    }

    [Fact]
    public void OnlyPicturesMarkedTwice_AreCompared()
    {
        var first = MarkedPictures.Picture("a.jpg", Facing.Left, (BodyPoint.Hip, 100, 150), (BodyPoint.Knee, 60, 190));
        var second = MarkedPictures.Picture("a.jpg", Facing.Left, (BodyPoint.Hip, 96, 148)) with { Pass = 2 };
        var repeat = new MarkerRepeat([first, MarkedPictures.Picture("b.jpg", Facing.Left, (BodyPoint.Hip, 1, 1)), second]);
        Assert.Equal(1, repeat.Pictures);
        Assert.Equal(new Offset(2, 1), Assert.Single(repeat.Of(BodyPoint.Hip)));
        Assert.Empty(repeat.Of(BodyPoint.Knee));
    }

    [Fact]
    public void RiderOfManyFrames_CountsOnce()
    {
        var mean = Systematic.Of([("clip", 3), ("clip", 5), ("clip", 4), ("still", 0)]);
        Assert.Equal((2, 2.0), (mean.Riders, mean.Mean));
        Assert.Equal(Math.Sqrt(8), mean.Sd, 12);
        Assert.Equal(2, mean.StandardError, 12);
    }

    [Fact]
    public void Report_NamesWhatWasLeftOutAndGivesTheOffset()
    {
        var picture = MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Hip, 100, 150));
        var turned = MarkedPictures.Picture("turned.jpg", Facing.Right, (BodyPoint.Hip, 100, 150));
        var report = new MarksReport([MarkedPictures.Reading(picture, Facing.Right, (BodyPoint.Hip, 106, 142)), MarkedPictures.Reading(turned, Facing.Left)], new MarkerRepeat([picture, turned])).ToMarkdown();
        Assert.Contains("2 pictures marked (2 stills, 0 frames of 0 clips), 1 compared.", report, StringComparison.Ordinal);
        Assert.Contains("| facing_wrong | turned.jpg |", report, StringComparison.Ordinal);
        Assert.Contains("| hip | 1 | 1 | +3.0 ± NaN | NaN | +4.0 ± NaN | NaN |", report, StringComparison.Ordinal);
    }
}
