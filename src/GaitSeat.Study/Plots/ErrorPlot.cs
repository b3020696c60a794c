using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>Errors of one measure over something.</summary>
/// <param name="X">What it is plotted over, one entry an error.</param>
/// <param name="Error">Measured minus true.</param>
/// <param name="Faint">Errors to be drawn faint: rows not to be trusted.</param>
/// <param name="Lines">Level lines with their names, such as bias and limits of agreement.</param>
/// <param name="Running">Whether to draw the median over tenths of the points.</param>
public sealed record ErrorPanel(
    string Title, string XLabel, string YLabel, double[] X, double[] Error, bool[] Faint, IReadOnlyList<(string Name, double Level)> Lines, bool Running);

/// <summary>Panels of errors, up to six on a sheet: agreement (errors over the truth, which is exact here, with bias and limits), errors over yaw or size.</summary>
public static class ErrorPlot
{
    private const int Columns = 3, Tenths = 10;
    private const double Room = 0.06;

    /// <summary>Draws the sheet as PNG and as SVG. Files appear whole or not at all.</summary>
    /// <exception cref="ArgumentException">No panel, more than six, or arrays of unequal length.</exception>
    public static void Save(IReadOnlyList<ErrorPanel> panels, string pngPath, string svgPath)
    {
        ArgumentNullException.ThrowIfNull(panels);
        if (panels.Count is < 1 or > 6) throw new ArgumentException($"{panels.Count} panels; 1 to 6 fit on a sheet.", nameof(panels));
        foreach (var p in panels)
            if (p.X.Length != p.Error.Length || p.X.Length != p.Faint.Length) throw new ArgumentException($"Panel '{p.Title}': X, Error and Faint differ in length.", nameof(panels));
        using var sheet = new PanelSheet([.. panels.Select(p => (Action<Plot>)(plot => Draw(plot, p)))], Math.Min(Columns, panels.Count));
        sheet.Save(pngPath, svgPath);
    }

    private static void Draw(Plot plot, ErrorPanel panel)
    {
        PlotStyle.Apply(plot, panel.YLabel);
        PlotStyle.Title(plot, panel.Title);
        PlotStyle.HorizontalLabel(plot, panel.XLabel);
        if (panel.X.Length == 0)
        {
            Marks.Empty(plot, "Nothing was measured");
            return;
        }

        Points(plot, panel, faint: true, PlotStyle.Faint);
        Points(plot, panel, faint: false, PlotStyle.Seat);
        if (panel.Running) RunningMedian(plot, panel);
        Limits(plot, panel);
        foreach (var (name, level) in panel.Lines.Where(l => double.IsFinite(l.Level))) Level(plot, name, level);
    }

    private static void Points(Plot plot, ErrorPanel panel, bool faint, Color colour)
    {
        var which = Enumerable.Range(0, panel.X.Length).Where(i => panel.Faint[i] == faint).ToArray();
        if (which.Length == 0) return;
        var points = plot.Add.ScatterPoints(which.Select(i => panel.X[i]).ToArray(), which.Select(i => panel.Error[i]).ToArray(), colour.WithAlpha(.55));
        points.MarkerSize = PlotStyle.MarkerSize - 1;
    }

    /// <summary>Median error of each tenth of the points, at their median place.</summary>
    private static void RunningMedian(Plot plot, ErrorPanel panel)
    {
        var trusted = Enumerable.Range(0, panel.X.Length).Where(i => !panel.Faint[i]).OrderBy(i => panel.X[i]).ToArray();
        var parts = Math.Min(Tenths, trusted.Length / Tenths);
        if (parts < 2) return;
        var groups = Enumerable.Range(0, parts).Select(k => trusted[(k * trusted.Length / parts)..((k + 1) * trusted.Length / parts)]).ToArray();
        Marks.Line(plot, [.. groups.Select(g => Median(g.Select(i => panel.X[i])))], [.. groups.Select(g => Median(g.Select(i => panel.Error[i])))], PlotStyle.Top);
    }

    private static void Limits(Plot plot, ErrorPanel panel)
    {
        var levels = panel.Lines.Select(l => l.Level).Where(double.IsFinite).Append(0).ToArray();
        double low = Math.Min(panel.Error.Min(), levels.Min()), high = Math.Max(panel.Error.Max(), levels.Max());
        double left = panel.X.Min(), right = panel.X.Max();
        double up = Math.Max(high - low, 1e-6) * Room, aside = Math.Max(right - left, 1e-6) * Room;
        plot.Axes.SetLimits(left - aside, right + aside, low - up, high + up);
    }

    private static void Level(Plot plot, string name, double level)
    {
        var line = plot.Add.HorizontalLine(level, PlotStyle.CutWidth, PlotStyle.Cut, name == ErrorLines.Bias ? LinePattern.Solid : LinePattern.Dashed);
        line.EnableAutoscale = false;
        var limits = plot.Axes.GetLimits();
        // Seconds need three figures after the point where cm and deg need two.
        var digits = limits.Top - limits.Bottom < 0.5 ? "0.000" : "0.00";
        var number = level.ToString($"+{digits};-{digits};{digits}", System.Globalization.CultureInfo.InvariantCulture);
        var text = plot.Add.Text($"{name} {number}", limits.Right, level);
        text.LabelAlignment = Alignment.LowerRight;
        text.LabelFontName = PlotFont.Name;
        text.LabelFontSize = PlotStyle.TextSize - 2;
        text.LabelFontColor = PlotStyle.Ink;
    }

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}

/// <summary>Names of the level lines.</summary>
public static class ErrorLines
{
    public const string Bias = "bias", Lower = "lower limit", Upper = "upper limit";
}
