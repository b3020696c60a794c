using GaitSeat.Pipeline.Watch;
using Microsoft.Extensions.Time.Testing;

namespace GaitSeat.Pipeline.Tests.Watch;

public sealed class SettledClipsTests
{
    private readonly FakeTimeProvider _time = new();
    private readonly SettledClips _clips;

    public SettledClipsTests() => _clips = new(_time, TimeSpan.FromSeconds(30));

    [Fact]
    public void ClipThatStandsStill_IsTaken_OnlyAfterTheWait()
    {
        Assert.Empty(At(0, new ClipTicket("a.mp4", 5, 1)));
        Assert.Empty(At(29, new ClipTicket("a.mp4", 5, 1)));
        Assert.Single(At(1, new ClipTicket("a.mp4", 5, 1)));
    }

    [Theory]
    [InlineData(6, 1)]
    [InlineData(5, 2)]
    public void ClipThatGrowsOrIsTouched_WaitsAnew(long bytes, long modified)
    {
        At(0, new ClipTicket("a.mp4", 5, 1));
        Assert.Empty(At(29, new ClipTicket("a.mp4", bytes, modified)));
        Assert.Empty(At(29, new ClipTicket("a.mp4", bytes, modified)));
        Assert.Single(At(1, new ClipTicket("a.mp4", bytes, modified)));
    }

    [Fact]
    public void ClipThatWasTakenAwayAndBroughtBack_WaitsAnew()
    {
        At(0, new ClipTicket("a.mp4", 5, 1));
        Assert.Empty(At(30));
        Assert.Empty(At(30, new ClipTicket("a.mp4", 5, 1)));
    }

    [Fact]
    public void OneGrowing_DoesNotHoldTheOther()
    {
        At(0, new ClipTicket("a.mp4", 5, 1), new ClipTicket("b.mp4", 5, 1));
        Assert.Equal("b.mp4", Assert.Single(At(30, new ClipTicket("a.mp4", 6, 2), new ClipTicket("b.mp4", 5, 1))).File);
    }

    private IReadOnlyList<ClipTicket> At(int secondsLater, params ClipTicket[] present)
    {
        _time.Advance(TimeSpan.FromSeconds(secondsLater));
        return _clips.Observe(present);
    }
}
