using GaitSeat.Vision.Sight;

namespace GaitSeat.Vision.Tests.Sight;

public sealed class LookGridTests
{
    // 30 frames a second, a look every sixth.
    private static readonly LookGrid Grid = new(0.2, 1 / 30.0);

    private static Look At(double time) => new(time, [new(DetectedKind.Person, new(0, 0, 10, 10), 0.5)]);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(4.0, 4.0)] // a look's own frame
    [InlineData(4.0166, 4.0166)] // within half a frame of it
    [InlineData(4.05, 4.2 - (1 / 60.0))] // between two: the next one's frame is the first
    [InlineData(4.1999, 4.1999)]
    public void StartOf_TheFirstFrameIsALooksFrame(double time, double start) => Assert.Equal(start, Grid.StartOf(time), 9);

    [Fact]
    public void Filled_IsEveryTimeOfTheGrid_EmptyWhereNobodyLooked()
    {
        var filled = Grid.Filled([At(0.6), At(0.8), At(1.6)]);
        Assert.Equal([0.0, 0.2, 0.4, 0.6, 0.8, 1.0, 1.2, 1.4, 1.6], filled.Select(l => Math.Round(l.TimeSeconds, 9)));
        Assert.Equal([0.6, 0.8, 1.6], filled.Where(l => l.Seen.Count > 0).Select(l => Math.Round(l.TimeSeconds, 9)));
    }

    [Fact]
    public void Filled_WithoutHoles_IsWhatWasSeen()
    {
        Look[] looks = [.. Enumerable.Range(0, 50).Select(i => At(i * 0.2))];
        Assert.Equal(looks, Grid.Filled(looks));
    }

    // A phone's frames stray, and a mean rate is a little off after an hour.
    [Theory]
    [InlineData(0, 0.03)]
    [InlineData(3600, 0.09)]
    public void Filled_StrayingTimes_RiseAndLeaveNoHole(double from, double stray)
    {
        var looks = Enumerable.Range(0, 400).Where(i => i % 100 < 30).Select(i => At(from + (i * 0.2) + (stray * Math.Sin(i)))).ToArray();
        var times = Grid.Filled(looks).Select(l => l.TimeSeconds).SkipWhile(t => t < from).ToArray();
        Assert.All(times.Zip(times.Skip(1)), pair => Assert.InRange(pair.Second - pair.First, 1e-9, 0.2 + (2 * stray) + 0.1));
    }

    [Fact]
    public void Filled_OfNothing_IsNothing() => Assert.Empty(Grid.Filled([]));
}
