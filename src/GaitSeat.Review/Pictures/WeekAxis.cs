using GaitSeat.Review.Seasons;

namespace GaitSeat.Review.Pictures;

/// <summary>Weeks as columns of a picture.</summary>
/// <param name="weeks">Every week, in order.</param>
internal sealed class WeekAxis(IReadOnlyList<DateOnly> weeks, double left, double right)
{
    /// <summary>Room for numbers at the left of a picture, px.</summary>
    internal const int NumbersLeft = 34;

    private const double LabelPx = 52, DaysPerWeek = 7;

    private double WeekPx => (right - left) / Math.Max(1, weeks.Count);

    /// <summary>The middle of the week.</summary>
    internal double At(DateOnly week) => left + ((week.DayNumber - weeks[0].DayNumber) / DaysPerWeek + 0.5) * WeekPx;

    /// <summary>As many weeks by name as there is room for, the first among them.</summary>
    internal void DrawWeeks(SvgText svg, double y)
    {
        var step = Math.Max(1, (int)Math.Ceiling(LabelPx / WeekPx));
        for (var w = 0; w < weeks.Count; w += step) svg.Words("strip-tick", At(weeks[w]), y, SeasonWeek.Label(weeks[w]), "middle");
    }

    /// <summary>
    /// A line with a mark at its head. Filled, at the beginning of the week, where the sheet tells of the change: the week was ridden with the new length. Hollow, in the
    /// middle of the week, where it was found in the strides, which lie on both sides of it.
    /// </summary>
    internal void DrawChanges(SvgText svg, IEnumerable<LengthMark> changes, double top, double bottom)
    {
        if (weeks.Count == 0) return;
        foreach (var change in changes)
        {
            var x = At(SeasonWeek.Of(change.Day)) - (change.IsFound ? 0 : WeekPx / 2);
            svg.Line(change.IsFound ? "change-found" : "change-told", x, top, x, bottom);
            svg.Add($"<path class=\"{(change.IsFound ? "change-found-head" : "change-told-head")}\" d=\"M{x - 4.5:0.#} {top - 6:0.#}L{x + 4.5:0.#} {top - 6:0.#}L{x:0.#} {top + 1:0.#}Z\"/>");
        }
    }
}
