using ScottPlot;

namespace GaitSeat.Study.Plots.Studies;

/// <summary>What the pictures of a study share.</summary>
internal static class StudyMarks
{
    private const double Room = 0.04;

    public static void Frame(Plot plot, string title, string xLabel, string yLabel)
    {
        PlotStyle.Apply(plot, yLabel);
        PlotStyle.Title(plot, title);
        PlotStyle.HorizontalLabel(plot, xLabel);
    }

    public static void Points(Plot plot, IReadOnlyList<(double X, double Y)> points, Color colour, float size)
    {
        if (points.Count == 0) return;
        var drawn = plot.Add.ScatterPoints(points.Select(p => p.X).ToArray(), points.Select(p => p.Y).ToArray(), colour);
        drawn.MarkerSize = size;
        drawn.MarkerShape = MarkerShape.FilledCircle;
    }

    /// <summary>Axes that hold all, with a little room.</summary>
    public static void Limits(Plot plot, IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var ((left, right), (low, high)) = (Ends(x), Ends(y));
        plot.Axes.SetLimits(left, right, low, high);
    }

    public static void Line(Plot plot, double x1, double y1, double x2, double y2, Color colour, LinePattern pattern)
    {
        var line = plot.Add.Line(x1, y1, x2, y2);
        line.LineColor = colour;
        line.LinePattern = pattern;
        line.LineWidth = PlotStyle.CutWidth;
    }

    private static (double Low, double High) Ends(IReadOnlyList<double> values)
    {
        double[] finite = [.. values.Where(double.IsFinite)];
        if (finite.Length == 0) return (0, 1);
        var (low, high) = (finite.Min(), finite.Max());
        var room = Math.Max(high - low, 1e-6) * Room;
        return (low - room, high + room);
    }
}
