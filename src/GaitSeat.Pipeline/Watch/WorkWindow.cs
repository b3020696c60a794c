using System.Globalization;
using GaitSeat.Pipeline.Season;

namespace GaitSeat.Pipeline.Watch;

/// <summary>
/// The hours in which clips may be worked on, by the wall clock of a time zone: open from <c>from</c> up to, not including, <c>to</c>, across midnight
/// where <c>to</c> is earlier. When the clocks are put forward or back the window is an hour shorter or longer; one that lies within the hour that comes
/// twice opens twice, one in the hour that is skipped not at all. Without hours it is always open.
/// </summary>
public sealed class WorkWindow
{
    /// <summary>A week and a day: beyond any change of the clocks that hides a window.</summary>
    private const int LookAheadMinutes = 8 * 24 * 60;

    private readonly (TimeOnly From, TimeOnly To)? _hours;
    private readonly TimeZoneInfo _zone;

    private WorkWindow((TimeOnly From, TimeOnly To)? hours, TimeZoneInfo zone) => (_hours, _zone) = (hours, zone);

    /// <param name="hours">Such as <c>22:00-06:00</c>; null for always.</param>
    /// <param name="zoneName">IANA name; null for <paramref name="machineZone"/>.</param>
    /// <exception cref="SeasonException">Not such a text, or no such zone.</exception>
    public static WorkWindow Parse(string? hours, string? zoneName, TimeZoneInfo machineZone)
    {
        ArgumentNullException.ThrowIfNull(machineZone);
        var zone = machineZone;
        if (zoneName is not null && !TimeZoneInfo.TryFindSystemTimeZoneById(zoneName, out zone))
            throw new SeasonException($"watch.time_zone: there is no time zone '{zoneName}'; IANA names are allowed, such as 'Europe/Berlin'");
        return new(hours is null ? null : Hours(hours), zone);
    }

    public bool IsOpen(DateTimeOffset now)
    {
        if (_hours is not var (from, to)) return true;
        var local = TimeOnly.FromTimeSpan(TimeZoneInfo.ConvertTime(now, _zone).TimeOfDay);
        return from < to ? local >= from && local < to : local >= from || local < to;
    }

    /// <summary>The next whole minute at which the window is open; <paramref name="now"/> itself while it is.</summary>
    public DateTimeOffset NextOpen(DateTimeOffset now)
    {
        if (IsOpen(now)) return now;
        var minute = new DateTimeOffset(now.Ticks - now.Ticks % TimeSpan.TicksPerMinute, now.Offset);
        for (var i = 1; i <= LookAheadMinutes; i++)
            if (IsOpen(minute.AddMinutes(i))) return TimeZoneInfo.ConvertTime(minute.AddMinutes(i), _zone);
        throw new InvalidOperationException($"the window {this} does not open within {LookAheadMinutes} min");
    }

    /// <summary>
    /// The day a night is named after, by the wall clock: the one the window opens on. What is after midnight of a window across midnight belongs to the
    /// evening before; without a window the day itself.
    /// </summary>
    public DateOnly NightOf(DateTimeOffset now)
    {
        var local = TimeZoneInfo.ConvertTime(now, _zone);
        var day = DateOnly.FromDateTime(local.DateTime);
        return _hours is var (from, to) && from > to && TimeOnly.FromTimeSpan(local.TimeOfDay) < from ? day.AddDays(-1) : day;
    }

    /// <summary>The same instant by the window's wall clock.</summary>
    public DateTimeOffset Local(DateTimeOffset instant) => TimeZoneInfo.ConvertTime(instant, _zone);

    public override string ToString() => _hours is var (from, to) ? string.Create(CultureInfo.InvariantCulture, $"{from:HH:mm}-{to:HH:mm} ({_zone.Id})") : "always";

    private static (TimeOnly From, TimeOnly To) Hours(string text)
    {
        var parts = text.Split('-', '–');
        if (parts.Length == 2 && Clock(parts[0], out var from) && Clock(parts[1], out var to) && from != to) return (from, to);
        throw new SeasonException($"watch.window: '{text}' is no window; two different times of day are allowed, such as '22:00-06:00'; null for always");
    }

    private static bool Clock(string text, out TimeOnly time) =>
        TimeOnly.TryParseExact(text.Trim(), ["HH:mm", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out time);
}
