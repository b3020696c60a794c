using GaitSeat.Model;
using GaitSeat.Studio.Accuracy.Marks;

namespace GaitSeat.Studio.Tests.Marks;

public sealed class LimbAngleTests
{
    // Signs as in the vocabulary: thigh and shank + lower end forward, foot + toe up, trunk + shoulder forward.
    [Theory]
    [InlineData("thigh", 100, 100, 150, 150, 45)]
    [InlineData("thigh", 100, 100, 100, 150, 0)]
    [InlineData("shank", 100, 100, 50, 150, -45)]
    [InlineData("foot pitch", 100, 100, 150, 50, 45)]
    [InlineData("foot pitch", 100, 100, 150, 100, 0)]
    [InlineData("trunk lean", 100, 100, 150, 50, 45)]
    public void AngleOfAKnownLimb_HasTheSignOfTheVocabularyAndIsAlikeOnBothReins(string name, double fromX, double fromY, double toX, double toY, double degrees)
    {
        var angle = LimbAngle.All.Single(a => a.Name == name);
        Assert.Equal(degrees, angle.Of(new(fromX, fromY), new(toX, toY), Facing.Right), 9);
        Assert.Equal(degrees, angle.Of(new(400 - fromX, fromY), new(400 - toX, toY), Facing.Left), 9);
    }

    [Fact]
    public void ErrorIsReadLessMarked_WithinAHalfTurn()
    {
        var foot = LimbAngle.All.Single(a => a.Name == "foot pitch");
        var marked = MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Heel, 100, 200), (BodyPoint.Toe, 60, 193));
        var reading = MarkedPictures.Reading(marked, Facing.Right, (BodyPoint.Heel, 100, 200), (BodyPoint.Toe, 60, 207));
        // 170.1 deg as marked, -170.1 as read: 19.9 deg further round, not 340 back.
        Assert.Equal(2 * double.RadiansToDegrees(Math.Atan(7 / 40.0)), foot.Error(reading)!.Value, 9);
    }

    [Fact]
    public void HiddenEnd_GivesNoAngle()
    {
        var thigh = LimbAngle.All[0];
        var marked = MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Hip, 100, 100));
        Assert.Null(thigh.Marked(marked));
        Assert.Null(thigh.Error(MarkedPictures.Reading(marked, Facing.Right, (BodyPoint.Hip, 100, 100), (BodyPoint.Knee, 120, 140))));
    }

    [Fact]
    public void SegmentRatio_IsOverTheShank()
    {
        var thigh = SegmentRatio.All.Single(r => r.Name == "thigh");
        var marked = MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Hip, 100, 100), (BodyPoint.Knee, 130, 140), (BodyPoint.Ankle, 130, 190));
        var ratio = thigh.Of(MarkedPictures.Reading(marked, Facing.Right, (BodyPoint.Hip, 100, 100), (BodyPoint.Knee, 130, 140), (BodyPoint.Ankle, 130, 240)));
        Assert.Equal((1.0, 0.5), ratio);
    }
}
