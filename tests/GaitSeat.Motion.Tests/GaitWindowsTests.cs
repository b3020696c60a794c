using GaitSeat.Motion.Gaits;

namespace GaitSeat.Motion.Tests;

public sealed class GaitWindowsTests
{
    private static readonly GaitSettings Settings = new() { WindowSeconds = 2.4, EdgeWindowSeconds = 1.4, StepSeconds = 0.25 };

    [Fact]
    public void LongSegment_WindowsGrowShorterTowardsBothEnds()
    {
        var windows = GaitWindows.Of(3, 9, Settings);

        Assert.Equal([1.4, 1.9, 2.4], windows.Take(3).Select(w => Math.Round(w.To - w.From, 9)));
        Assert.Equal([2.4, 1.9, 1.4], windows.TakeLast(3).Select(w => Math.Round(w.To - w.From, 9)));
        Assert.All(windows.Take(2), w => Assert.Equal(3, w.From));
        Assert.All(windows.TakeLast(2), w => Assert.Equal(9, w.To));
        Assert.All(windows, w => Assert.InRange(w.From, 3, w.To));
        Assert.All(windows.Zip(windows.Skip(1)), p => Assert.InRange(p.Second.From + p.Second.To - p.First.From - p.First.To, 0.3, 0.8));
    }

    [Theory]
    [InlineData(1.7, 1.7)]
    [InlineData(2.6, 2.4)]
    public void SegmentHardlyLongerThanAWindow_IsOne(double seconds, double windowSeconds)
    {
        var (from, to) = Assert.Single(GaitWindows.Of(1, 1 + seconds, Settings));
        Assert.Equal(windowSeconds, to - from, 9);
        Assert.Equal(1 + seconds / 2, (from + to) / 2, 9);
    }
}
