using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>One row of a coverage panel: a group, how many strides it holds, and the share of intervals that hold the truth.</summary>
public readonly record struct CoverageRow(string Group, int Count, double HeldPct);

/// <summary>How often the 95 % intervals hold the truth, group by group, one panel a measure, with the band they should lie in.</summary>
public static class CoveragePlot
{
    private const float LeftPx = 210;
    private const double Room = 0.7;

    /// <summary>Groups with fewer strides are drawn faint: one stride is 5 % or more of them.</summary>
    private const int FewStrides = 20;

    /// <param name="panels">One to three measures; their groups need not be the same.</param>
    /// <param name="lowPct">Lower edge of the band, percent.</param>
    /// <param name="highPct">Upper edge.</param>
    /// <exception cref="ArgumentException">No panel, or more than three.</exception>
    public static void Save(IReadOnlyList<(string Title, IReadOnlyList<CoverageRow> Rows)> panels, double lowPct, double highPct, string pngPath, string svgPath)
    {
        ArgumentNullException.ThrowIfNull(panels);
        if (panels.Count is < 1 or > 3) throw new ArgumentException($"{panels.Count} panels; 1 to 3 fit on a sheet.", nameof(panels));
        using var sheet = new PanelSheet([.. panels.Select(p => (Action<Plot>)(plot => Draw(plot, p.Title, p.Rows, lowPct, highPct)))], panels.Count, LeftPx);
        sheet.Save(pngPath, svgPath);
    }

    private static void Draw(Plot plot, string title, IReadOnlyList<CoverageRow> rows, double lowPct, double highPct)
    {
        PlotStyle.Apply(plot, "");
        PlotStyle.Title(plot, title);
        PlotStyle.HorizontalLabel(plot, "intervals that hold the truth, %");
        if (rows.Count == 0)
        {
            Marks.Empty(plot, "Nothing was measured");
            return;
        }

        var band = plot.Add.HorizontalSpan(lowPct, highPct);
        band.FillStyle.Color = PlotStyle.Thigh.WithAlpha(.15);
        band.LineStyle.Width = 0;
        for (var i = 0; i < rows.Count; i++)
        {
            var inside = rows[i].HeldPct >= lowPct && rows[i].HeldPct <= highPct;
            var colour = rows[i].Count < FewStrides ? PlotStyle.Faint : inside ? PlotStyle.Thigh : PlotStyle.Top;
            plot.Add.Marker(rows[i].HeldPct, rows.Count - 1 - i, MarkerShape.FilledCircle, PlotStyle.MarkerSize, colour);
        }

        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual(
            [.. Enumerable.Range(0, rows.Count).Select(i => (double)(rows.Count - 1 - i))], [.. rows.Select(r => $"{r.Group} (n {r.Count})")]);
        var least = Math.Min(rows.Min(r => r.HeldPct), lowPct);
        plot.Axes.SetLimits(Math.Max(0, least - 5), 102, -Room, rows.Count - 1 + Room);
    }
}
