using GaitSeat.Review.Questions;
using GaitSeat.Review.Seasons;

namespace GaitSeat.Review.Pictures;

/// <summary>Faults of one rider over the weeks: a row a fault, its name above its weeks, a disc a week that grows with the share of spells flagged; a hollow small ring where there was none.</summary>
internal static class FaultsPicture
{
    private const int Left = 14, Right = 14, Top = 4, Row = 32, Name = 12, Disc = 23, Axis = 18, Largest = 7, LeastRows = 3;

    internal static string Draw(IReadOnlyList<DateOnly> weeks, IReadOnlyList<WeekFault> faults, IReadOnlyList<LengthMark> changes, int widthPx)
    {
        var rows = faults.GroupBy(f => f.Fault).ToArray();
        var height = Top + Row * Math.Max(LeastRows, rows.Length) + Axis;
        var axis = new WeekAxis(weeks, Left, widthPx - Right);
        var svg = new SvgText();
        svg.Add($"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"season\" width=\"{widthPx}\" height=\"{height}\" viewBox=\"0 0 {widthPx} {height}\">");
        if (rows.Length == 0)
        {
            svg.Words("strip-tick", 8, Top + Name, "nothing flagged");
            return svg.Add($"</svg>").ToString();
        }

        axis.DrawChanges(svg, changes, Top + 2, height - Axis);
        axis.DrawWeeks(svg, height - 4);
        foreach (var (row, i) in rows.Select((r, i) => (r, i)))
        {
            var y = Top + Row * i + Disc;
            svg.Words("strip-caption", 8, Top + Row * i + Name, Labels.Of(row.Key));
            foreach (var week in row)
            {
                if (week.Flagged == 0) svg.Dot("fault-none", axis.At(week.Week), y, 2);
                else svg.Dot("fault-flagged", axis.At(week.Week), y, 2 + (Largest - 2) * Math.Sqrt((double)week.Flagged / week.Spells));
            }
        }

        return svg.Add($"</svg>").ToString();
    }

    internal static string Words(IReadOnlyList<WeekFault> faults) => faults.Count == 0
        ? "No fault was flagged."
        : "Flagged spells by week: " + string.Join("; ", faults.Where(f => f.Flagged > 0).Select(f => $"{Labels.Of(f.Fault)} {f.Flagged} of {f.Spells} in the week of {SeasonWeek.Label(f.Week)}"));
}
