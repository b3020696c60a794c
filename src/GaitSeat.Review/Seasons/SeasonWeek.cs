using System.Globalization;

namespace GaitSeat.Review.Seasons;

/// <summary>Weeks as the season screen has them: Monday to Sunday, named by the Monday.</summary>
internal static class SeasonWeek
{
    private const int Days = 7;

    internal static DateOnly Of(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + Days - 1) % Days));

    /// <summary>Every week from the first to the last, those without a clip too.</summary>
    internal static IReadOnlyList<DateOnly> Span(IEnumerable<DateOnly> days)
    {
        DateOnly[] weeks = [.. days.Select(Of).Distinct().Order()];
        return weeks.Length == 0 ? [] : [.. Enumerable.Range(0, (weeks[^1].DayNumber - weeks[0].DayNumber) / Days + 1).Select(w => weeks[0].AddDays(w * Days))];
    }

    internal static string Label(DateOnly week) => week.ToString("d MMM", CultureInfo.InvariantCulture);
}
