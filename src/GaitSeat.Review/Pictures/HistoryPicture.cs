using GaitSeat.Model;
using GaitSeat.Review.Questions;

namespace GaitSeat.Review.Pictures;

/// <summary>How a measure of one rider went: one dot a spell over the days, with the 95 % interval of its mean from stride to stride; the spell in question filled.</summary>
internal static class HistoryPicture
{
    private const int Left = 42, Right = 12, Top = 8, Height = 118, Axis = 20;

    internal static string Draw(IReadOnlyList<HistoryPoint> points, SpellKey current, double? threshold, int widthPx)
    {
        var svg = new SvgText();
        svg.Add($"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"history\" width=\"{widthPx}\" height=\"{Height}\" viewBox=\"0 0 {widthPx} {Height}\">");
        if (points.Count > 0) DrawPoints(svg, points, current, threshold, widthPx);
        return svg.Add($"</svg>").ToString();
    }

    private static void DrawPoints(SvgText svg, IReadOnlyList<HistoryPoint> points, SpellKey current, double? threshold, int widthPx)
    {
        var (first, last) = (points[0].Date.DayNumber, points[^1].Date.DayNumber);
        double X(DateOnly day) => last == first ? (Left + widthPx - Right) / 2.0 : Left + 8 + (double)(day.DayNumber - first) / (last - first) * (widthPx - Left - Right - 16);
        var all = points.SelectMany(p => new[] { p.Mean.Value - Half(p), p.Mean.Value + Half(p) }).Concat(threshold is { } t ? [t] : []);
        var scale = ValueScale.Over(all, Top, Height - Axis, 1e-3);
        foreach (var tick in scale.Ticks())
        {
            svg.Line("strip-grid", Left, scale.At(tick), widthPx - Right, scale.At(tick));
            svg.Words("strip-tick", Left - 6, scale.At(tick) + 4, FormattableString.Invariant($"{tick:0.##}"), "end");
        }

        if (threshold is { } limit) svg.Line("strip-limit", Left, scale.At(limit), widthPx - Right, scale.At(limit));
        foreach (var point in points)
        {
            if (Half(point) > 0) svg.Line("strip-interval", X(point.Date), scale.At(point.Mean.Value - Half(point)), X(point.Date), scale.At(point.Mean.Value + Half(point)));
            svg.Dot(point.Spell == current ? "history-now" : "history-then", X(point.Date), scale.At(point.Mean.Value), point.Spell == current ? 5 : 3.5);
        }

        svg.Words("strip-tick", Left, Height - 5, Day(points[0]));
        if (last != first) svg.Words("strip-tick", widthPx - Right, Height - 5, Day(points[^1]), "end");
    }

    private static string Day(HistoryPoint point) => point.Date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static double Half(HistoryPoint point) => double.IsFinite(point.Mean.HalfWidth95) ? point.Mean.HalfWidth95 : 0;
}
