using GaitSeat.Model;
using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Studio.Tests.Accuracy;

public sealed class ClipErrorsTests
{
    private static readonly ClipTruth OneStride = Made.Truth(4, [Made.TrueStride(1)]);

    [Fact]
    public void MissedStride_SaysTheReasonGiven()
    {
        Assert.Null(Why(Made.Result(OneStride, [])));
        Assert.Equal("clip: no_rider", Why(ClipResult.Without("no_rider", 1280)));
        Assert.Equal("stride: hole_in_points", Why(Made.Result(OneStride, [], leftOut: [new(LeftOutScope.Stride, "hole_in_points", 1, "", 1.1)])));
        Assert.Null(Why(Made.Result(OneStride, [], leftOut: [new(LeftOutScope.Stride, "hole_in_points", 1, "", 2.5)])));
        Assert.Equal("frames left out", Why(Made.Result(OneStride, [], followed: t => t is < 1.2 or > 1.4)));
        Assert.Null(Why(Made.Result(OneStride, [], followed: t => t is < 1.2 or > 1.25)));
        Assert.Equal("gait unknown", Why(Made.Result(OneStride, [], spells: [Made.Spell(Gait.Unknown, 0, 4)])));
        Assert.Null(Why(Made.Result(OneStride, [], spells: [Made.Spell(Gait.SittingTrot, 0, 4)])));
    }

    [Fact]
    public void GaitTime_GoesFrameByFrame()
    {
        var truth = Made.Truth(8, [], [new(0, 4, "rising"), new(5, 8, "walk")]);

        var gaits = GaitTime.Of(truth, new([Made.Spell(Gait.RisingTrot, 0, 3), Made.Spell(Gait.Canter, 6, 8)], [], [], ClipMotion.Nothing.Trace));

        double Seconds(Gait real, Gait? called) => gaits.Where(g => g.True == real && g.Called == called).Sum(g => g.Seconds);
        Assert.Equal(3, Seconds(Gait.RisingTrot, Gait.RisingTrot), 0.05);
        Assert.Equal(1, Seconds(Gait.RisingTrot, null), 0.05);
        Assert.Equal(1, Seconds(Gait.Walk, null), 0.05);
        Assert.Equal(2, Seconds(Gait.Walk, Gait.Canter), 0.05);
        Assert.Equal(7, gaits.Sum(g => g.Seconds), 0.05);
    }

    [Fact]
    public void InventedStride_KnowsWhatTheHorseDid()
    {
        var truth = Made.Truth(8, [Made.TrueStride(1)], [new(0, 4, "rising"), new(4.5, 8, "walk")]);

        var clip = ClipErrors.Compare(truth, Made.Result(truth, [Made.Stride(1), Made.Stride(5), Made.Stride(3.9)]));

        Assert.Equal([Gait.Walk, null], clip.Invented.Select(i => i.TrueGait));
    }

    [Theory]
    [InlineData(14, 250, "0-15", "200-300", true)]
    [InlineData(-16, 250, "15-25", "200-300", false)]
    [InlineData(39, 199, "25-40", "150-200", false)]
    [InlineData(-88, 301, "40 and more", "300 and more", false)]
    [InlineData(0, 149, "0-15", "0-150", false)]
    public void Circumstances_ComeFromTheFramesOfTheStride(double yaw, double riderPx, string yawBand, string heightBand, bool sideOn)
    {
        var at = Circumstances.Of(Made.Truth(4, [], yawDeg: yaw, riderPx: riderPx) with { Conditions = new Dictionary<string, string> { ["light"] = "low", ["facing"] = "left", ["rate"] = "variable" } }, 1, 2);

        Assert.Equal((yawBand, heightBand, sideOn), (at.Groups["yaw"], at.Groups["rider_px"], at.IsSideOn));
        Assert.Equal(("low", "right", "variable"), (at.Groups["light"], at.Groups["facing"], at.Groups["fps"]));
    }

    private static string? Why(ClipResult result) => Assert.Single(ClipErrors.Compare(OneStride, result).Missed).Why;
}
