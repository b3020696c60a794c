using GaitSeat.Model;
using GaitSeat.Studio.Accuracy.Marks;

namespace GaitSeat.Studio.Tests.Marks;

public sealed class PointErrorTests
{
    // Read 6 px to the right of the mark and 8 px above it, on a rider of 200 px.
    [Theory]
    [InlineData(Facing.Right, 3)]
    [InlineData(Facing.Left, -3)]
    public void OffsetIsForwardTheWayTheRiderFaces_AndUpAgainstThePicture(Facing facing, double forwardPct)
    {
        var picture = MarkedPictures.Picture("a.jpg", facing, (BodyPoint.Hip, 100, 150));
        var error = Assert.Single(PointErrors.Of([MarkedPictures.Reading(picture, facing, (BodyPoint.Hip, 106, 142))]));
        Assert.Equal(forwardPct, error.Offset.ForwardPct, 9);
        Assert.Equal(4, error.Offset.UpPct, 9);
        Assert.Equal(5, error.Offset.LengthPct, 9);
    }

    // A trunk that leans 90 deg forward, to the left of the picture: the shoulder lies ahead of the hip, and up is across the trunk, behind it.
    [Fact]
    public void HipOfALyingTrunk_IsOffAlongItWhereItIsOffForward()
    {
        var picture = MarkedPictures.Picture("a.jpg", Facing.Left, (BodyPoint.Hip, 200, 150), (BodyPoint.Shoulder, 120, 150));
        var hip = HipInTrunk.Of(PointErrors.Of([MarkedPictures.Reading(picture, Facing.Left, (BodyPoint.Hip, 194, 148))]).Single())!.Value;
        Assert.Equal(3, hip.AlongPct, 9);
        Assert.Equal(-1, hip.AcrossPct, 9);
        Assert.Equal(90, hip.LeanDeg, 9);
    }

    [Fact]
    public void PointHiddenOrNotSeen_GivesNoError()
    {
        var picture = MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Hip, 100, 150), (BodyPoint.Knee, 150, 180));
        var reading = MarkedPictures.Reading(picture, Facing.Right, (BodyPoint.Hip, 100, 150), (BodyPoint.Toe, 160, 250));
        Assert.Equal(BodyPoint.Hip, Assert.Single(PointErrors.Of([reading])).Point);
    }

    [Fact]
    public void ReadingThatCannotBeCompared_SaysWhyAndGivesNoError()
    {
        var picture = MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Hip, 100, 150));
        PictureReading[] readings =
        [
            MarkedPictures.Reading(picture, Facing.Left, (BodyPoint.Hip, 100, 150)),
            MarkedPictures.Reading(picture with { RiderBottomPx = null }, Facing.Right, (BodyPoint.Hip, 100, 150)),
            PictureReading.Missing(picture, "no_rider"),
        ];
        Assert.Equal([PictureReading.FacingWrong, PictureReading.HeightNotMarked, "no_rider"], readings.Select(r => r.LeftOutReason));
        Assert.Empty(PointErrors.Of(readings));
    }

    [Fact]
    public void TwoMarkings_AreHalvedAndTheWorseVisibilityCounts()
    {
        var first = MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Hip, 100, 150), (BodyPoint.Toe, 10, 20));
        var second = MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Hip, 104, 156)) with { Pass = 2 };
        second = second with { Marks = new Dictionary<BodyPoint, Mark>(second.Marks) { [BodyPoint.Hip] = new(new(104, 156), MarkVisibility.Judged) } };
        var merged = Assert.Single(MarksFile.Merged([first, second]));
        Assert.Equal(new Mark(new(102, 153), MarkVisibility.Judged), merged.Marks[BodyPoint.Hip]);
        Assert.Equal(new Mark(new(10, 20), MarkVisibility.Clear), merged.Marks[BodyPoint.Toe]);
        Assert.Equal(MarkVisibility.Hidden, merged.Marks[BodyPoint.Ear].Visibility);
    }

    [Theory]
    [InlineData(0.51, null)]
    [InlineData(0.56, "no_such_frame")]
    public void TruthOfAFrame_IsTakenWhereTheTimeFits(double timeSeconds, string? reason)
    {
        var picture = MarkedPictures.Picture("a.mp4", Facing.Right, (BodyPoint.Hip, 100, 150)) with { TimeSeconds = timeSeconds };
        var reading = TruthReading.Of(picture, [MarkedPictures.True(0, new(1, 1)), MarkedPictures.True(0.5, new(104, 148))], 25);
        Assert.Equal(reason, reading.LeftOutReason);
        if (reason is null) Assert.Equal(new Offset(2, 1), Assert.Single(PointErrors.Of([reading])).Offset);
    }

    [Fact]
    public void LegIsTwiceTheShank_AndUnknownWhereItIsHidden()
    {
        Assert.Equal(100, MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Knee, 100, 150), (BodyPoint.Ankle, 130, 190)).LegPx);
        Assert.Null(MarkedPictures.Picture("a.jpg", Facing.Right, (BodyPoint.Knee, 100, 150)).LegPx);
    }

    [Fact]
    public void MarkingsOfDifferentPictures_AreNotMixed() =>
        Assert.Throws<ArgumentException>(() => MarkedPictures.Picture("a.jpg", Facing.Right).MeanWith(MarkedPictures.Picture("b.jpg", Facing.Right)));
}
