using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>What was called what: a table of rows (truth) and columns (called), each cell shaded by its share of the row.</summary>
public static class ConfusionPlot
{
    /// <param name="amounts">By row, then column; all 0 or more.</param>
    /// <param name="unit">Unit of the amounts, written after each.</param>
    /// <exception cref="ArgumentException">The amounts do not fit rows and columns.</exception>
    public static void Save(string title, IReadOnlyList<string> rows, IReadOnlyList<string> columns, double[][] amounts, string unit, string pngPath, string svgPath)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(amounts);
        if (amounts.Length != rows.Count || amounts.Any(a => a.Length != columns.Count))
            throw new ArgumentException($"The amounts must be {rows.Count} rows of {columns.Count}.", nameof(amounts));
        const float left = 170;
        using var sheet = new PanelSheet([plot => Draw(plot, title, rows, columns, amounts, unit)], 1, left);
        sheet.Save(pngPath, svgPath);
    }

    private static void Draw(Plot plot, string title, IReadOnlyList<string> rows, IReadOnlyList<string> columns, double[][] amounts, string unit)
    {
        PlotStyle.Apply(plot, "truth");
        PlotStyle.Title(plot, title);
        PlotStyle.HorizontalLabel(plot, "called");
        plot.Grid.YAxisStyle.IsVisible = false;
        for (var i = 0; i < rows.Count; i++)
        {
            var whole = amounts[i].Sum();
            for (var k = 0; k < columns.Count; k++) Cell(plot, k, rows.Count - 1 - i, amounts[i][k], whole, unit);
        }

        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual([.. rows.Select((_, i) => (double)(rows.Count - 1 - i))], [.. rows.Select(Words)]);
        plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericManual([.. columns.Select((_, k) => (double)k)], [.. columns.Select(Words)]);
        plot.Axes.SetLimits(-0.5, columns.Count - 0.5, -0.5, rows.Count - 0.5);
    }

    private static void Cell(Plot plot, int x, int y, double amount, double whole, string unit)
    {
        var share = whole > 0 ? amount / whole : 0;
        var cell = plot.Add.Rectangle(x - 0.48, x + 0.48, y - 0.46, y + 0.46);
        cell.FillColor = PlotStyle.Seat.WithAlpha(share);
        cell.LineColor = PlotStyle.Grid;
        var text = plot.Add.Text(amount > 0 ? FormattableString.Invariant($"{amount:0.0} {unit}\n{100 * share:0.0} %") : whole > 0 ? "0" : "–", x, y);
        text.LabelAlignment = Alignment.MiddleCenter;
        text.LabelFontName = PlotFont.Name;
        text.LabelFontSize = PlotStyle.TextSize;
        text.LabelFontColor = share > 0.6 ? Colors.White : PlotStyle.Ink;
    }

    private static string Words(string term) => term.Replace('_', ' ');
}
