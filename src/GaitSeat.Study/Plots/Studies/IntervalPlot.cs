using ScottPlot;

namespace GaitSeat.Study.Plots.Studies;

/// <summary>One row of a caterpillar or forest plot.</summary>
/// <param name="Stands">A summary of the others, drawn apart in colour and shape.</param>
public readonly record struct IntervalRow(string Name, double Value, double Low, double High, bool Stands = false);

/// <summary>Values with their 95 % intervals, one under the other: riders from least to most (caterpillar), or questions and their sum (forest).</summary>
public static class IntervalPlot
{
    /// <summary>Above so many rows the names would overlap and are left out.</summary>
    private const int MostNames = 60;

    private const int WidthPx = 900, RowPx = 20, RestPx = 150, LeastPx = 320, MostPx = 1250;
    private const float LetterPx = 7.5f, LeastLeftPx = 84, MostLeftPx = 330;

    /// <param name="rows">From top to bottom.</param>
    /// <param name="reference">Where a line is drawn, such as no effect; NaN draws none.</param>
    public static void Save(string title, string xLabel, IReadOnlyList<IntervalRow> rows, double reference, string note, string pngPath, string svgPath)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var named = rows.Count <= MostNames;
        var height = Math.Clamp(rows.Count * (named ? RowPx : 2) + RestPx, LeastPx, MostPx);
        var left = named ? Math.Clamp(LetterPx * rows.Max(r => r.Name.Length) + 24, LeastLeftPx, MostLeftPx) : LeastLeftPx;
        using var sheet = new PanelSheet([Draw], 1, left, new(WidthPx, height, 2), note);
        sheet.Save(pngPath, svgPath);

        void Draw(Plot plot)
        {
            StudyMarks.Frame(plot, title, xLabel, "");
            if (double.IsFinite(reference)) plot.Add.VerticalLine(reference, PlotStyle.CutWidth, PlotStyle.Cut, LinePattern.Dashed);
            for (var i = 0; i < rows.Count; i++) Row(plot, rows[i], rows.Count - 1 - i, named);
            plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual(
                named ? [.. rows.Select((_, i) => (double)(rows.Count - 1 - i))] : [], named ? [.. rows.Select(r => r.Name)] : []);
            if (!named) plot.YLabel($"{rows.Count} rows, by size", PlotStyle.TextSize);
            plot.Grid.YAxisStyle.IsVisible = false;
            plot.Grid.XAxisStyle.IsVisible = true;
            StudyMarks.Limits(plot, [.. rows.SelectMany(r => new[] { r.Low, r.High, r.Value }), .. double.IsFinite(reference) ? new[] { reference } : []], [-0.8, rows.Count - 0.2]);
        }
    }

    private static void Row(Plot plot, IntervalRow row, double y, bool named)
    {
        var colour = row.Stands ? PlotStyle.Top : PlotStyle.Seat;
        if (double.IsFinite(row.Low) && double.IsFinite(row.High)) StudyMarks.Line(plot, row.Low, y, row.High, y, colour.WithAlpha(named ? 1 : .5), LinePattern.Solid);
        if (double.IsFinite(row.Value)) plot.Add.Marker(row.Value, y, row.Stands ? MarkerShape.FilledDiamond : MarkerShape.FilledCircle, row.Stands ? PlotStyle.MarkerSize + 4 : named ? PlotStyle.MarkerSize : 3, colour);
    }
}
