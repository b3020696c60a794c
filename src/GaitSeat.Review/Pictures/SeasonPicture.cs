using GaitSeat.Model;
using GaitSeat.Review.Questions;
using GaitSeat.Review.Seasons;

namespace GaitSeat.Review.Pictures;

/// <summary>A measure of one rider over the weeks: a dot a week with its 95 % interval, and lines where the stirrup length changed. All riders share weeks and heights.</summary>
internal static class SeasonPicture
{
    private const int Right = 8, Top = 14, Height = 116, Axis = 18;

    /// <summary>What every picture of one measure shares.</summary>
    internal sealed record Frame(IReadOnlyList<DateOnly> Weeks, double Low, double High);

    internal static Frame FrameOf(IReadOnlyList<DateOnly> weeks, IEnumerable<WeekPoint> all)
    {
        var scale = ValueScale.Over(all.SelectMany(p => new[] { p.Mean.Value - Half(p), p.Mean.Value + Half(p) }), 0, 1, 1);
        return new(weeks, scale.Low, scale.High);
    }

    internal static string Draw(Frame frame, IReadOnlyList<WeekPoint> points, IReadOnlyList<LengthMark> changes, int widthPx)
    {
        var axis = new WeekAxis(frame.Weeks, WeekAxis.NumbersLeft, widthPx - Right);
        var scale = new ValueScale(frame.Low, frame.High, Top, Height - Axis);
        var svg = new SvgText();
        svg.Add($"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"season\" width=\"{widthPx}\" height=\"{Height}\" viewBox=\"0 0 {widthPx} {Height}\">");
        foreach (var tick in scale.Ticks())
        {
            svg.Line("strip-grid", WeekAxis.NumbersLeft, scale.At(tick), widthPx - Right, scale.At(tick));
            svg.Words("strip-tick", WeekAxis.NumbersLeft - 6, scale.At(tick) + 4, FormattableString.Invariant($"{tick:0.##}"), "end");
        }

        axis.DrawChanges(svg, changes, Top - 6, Height - Axis);
        axis.DrawWeeks(svg, Height - 4);
        svg.Path("season-line", points.Select(p => (axis.At(p.Week), scale.At(p.Mean.Value))));
        foreach (var point in points)
        {
            if (Half(point) > 0) svg.Line("strip-interval", axis.At(point.Week), scale.At(point.Mean.Value - Half(point)), axis.At(point.Week), scale.At(point.Mean.Value + Half(point)));
            svg.Dot("strip-value", axis.At(point.Week), scale.At(point.Mean.Value), 3.5);
        }

        return svg.Add($"</svg>").ToString();
    }

    /// <summary>The same in words, for those who do not see the picture.</summary>
    internal static string Words(MeasureDefinition measure, IReadOnlyList<WeekPoint> points) => points.Count == 0
        ? $"{Labels.Of(measure)}: not measured"
        : $"{Labels.Of(measure)}, {Labels.Unit(measure)}, by week: {string.Join("; ", points.Select(p => $"{SeasonWeek.Label(p.Week)} {Labels.Value(p.Mean)}"))}";

    private static double Half(WeekPoint point) => double.IsFinite(point.Mean.HalfWidth95) ? point.Mean.HalfWidth95 : 0;
}
