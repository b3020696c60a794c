using System.Globalization;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch;

namespace GaitSeat.Pipeline.Tests.Watch;

public sealed class WorkWindowTests
{
    /// <summary>Berlin puts its clocks forward on 29 March 2026 at 01:00 UTC and back on 25 October 2026 at 01:00 UTC (IANA time zone database).</summary>
    [Theory]
    [InlineData("22:00-06:00", "2026-01-10T20:59:59Z", false)]
    [InlineData("22:00-06:00", "2026-01-10T21:00:00Z", true)]
    [InlineData("22:00-06:00", "2026-01-11T04:59:59Z", true)]
    [InlineData("22:00-06:00", "2026-01-11T05:00:00Z", false)]
    [InlineData("22:00-06:00", "2026-07-10T20:00:00Z", true)]
    [InlineData("22:00-06:00", "2026-03-29T03:59:59Z", true)]
    [InlineData("22:00-06:00", "2026-03-29T04:00:00Z", false)]
    [InlineData("22:00-06:00", "2026-10-25T04:59:59Z", true)]
    [InlineData("22:00-06:00", "2026-10-25T05:00:00Z", false)]
    [InlineData("2:30-3:30", "2026-03-29T01:10:00Z", true)]
    [InlineData("02:10-02:40", "2026-10-25T00:20:00Z", true)]
    [InlineData("02:10-02:40", "2026-10-25T01:00:00Z", false)]
    [InlineData("02:10-02:40", "2026-10-25T01:20:00Z", true)]
    [InlineData("09:00-17:00", "2026-01-10T07:59:00Z", false)]
    [InlineData("09:00-17:00", "2026-01-10T08:00:00Z", true)]
    [InlineData(null, "2026-01-10T12:00:00Z", true)]
    public void Instant_IsInsideOrOutside_ByTheWallClock(string? hours, string instant, bool open) =>
        Assert.Equal(open, Berlin(hours).IsOpen(At(instant)));

    [Theory]
    [InlineData("22:00-06:00", "2026-01-10T12:00:30Z", "2026-01-10T21:00:00Z")]
    [InlineData("22:00-06:00", "2026-01-10T23:00:30Z", "2026-01-10T23:00:30Z")]
    [InlineData("02:10-02:40", "2026-03-28T12:00:00Z", "2026-03-30T00:10:00Z")]
    public void NextOpen_IsTheNextMinuteInside(string hours, string now, string next) => Assert.Equal(At(next), Berlin(hours).NextOpen(At(now)));

    [Theory]
    [InlineData("22:00-06:00", "2026-01-10T22:00:00Z", "2026-01-10")]
    [InlineData("22:00-06:00", "2026-01-11T04:00:00Z", "2026-01-10")]
    [InlineData("22:00-06:00", "2026-01-11T05:20:00Z", "2026-01-10")]
    [InlineData("22:00-06:00", "2026-01-11T21:00:00Z", "2026-01-11")]
    [InlineData("01:00-05:00", "2026-01-11T03:00:00Z", "2026-01-11")]
    [InlineData(null, "2026-01-10T23:30:00Z", "2026-01-11")]
    public void Night_IsNamedAfterTheEveningItBeginsOn(string? hours, string instant, string night) =>
        Assert.Equal(DateOnly.Parse(night, CultureInfo.InvariantCulture), Berlin(hours).NightOf(At(instant)));

    [Theory]
    [InlineData("22-06", null, "watch.window")]
    [InlineData("22:00-22:00", null, "watch.window")]
    [InlineData("25:00-06:00", null, "watch.window")]
    [InlineData("22:00", null, "watch.window")]
    [InlineData("22:00-06:00", "Europe/Gondor", "watch.time_zone")]
    public void WrongWindow_SaysKeyAndWhatIsAllowed(string hours, string? zone, string key)
    {
        var error = Assert.Throws<SeasonException>(() => WorkWindow.Parse(hours, zone, TimeZoneInfo.Utc));

        Assert.StartsWith(key + ":", error.Message, StringComparison.Ordinal);
        Assert.Contains("allowed", error.Message, StringComparison.Ordinal);
    }

    private static WorkWindow Berlin(string? hours) => WorkWindow.Parse(hours, "Europe/Berlin", TimeZoneInfo.Utc);

    private static DateTimeOffset At(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture);
}
