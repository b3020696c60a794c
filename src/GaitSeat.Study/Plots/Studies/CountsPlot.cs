using ScottPlot;

namespace GaitSeat.Study.Plots.Studies;

/// <summary>How many of what were left out, by reason.</summary>
public static class CountsPlot
{
    private const int WidthPx = 900, RowPx = 30, RestPx = 130, LeastPx = 220;
    private const float LetterPx = 7.2f, LeastLeftPx = 120, MostLeftPx = 420;

    /// <param name="counts">From top to bottom, one or more.</param>
    public static void Save(string title, string xLabel, IReadOnlyList<(string Reason, long Count)> counts, string note, string pngPath, string svgPath)
    {
        ArgumentOutOfRangeException.ThrowIfZero(counts.Count);
        var left = Math.Clamp(LetterPx * counts.Max(c => c.Reason.Length) + 24, LeastLeftPx, MostLeftPx);
        using var sheet = new PanelSheet([Draw], 1, left, new(WidthPx, Math.Max(LeastPx, RowPx * counts.Count + RestPx), 2), note);
        sheet.Save(pngPath, svgPath);

        void Draw(Plot plot)
        {
            StudyMarks.Frame(plot, title, xLabel, "");
            for (var i = 0; i < counts.Count; i++) Bar(plot, counts[i].Count, counts.Count - 1 - i);
            plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual([.. counts.Select((_, i) => (double)(counts.Count - 1 - i))], [.. counts.Select(c => c.Reason)]);
            plot.Grid.YAxisStyle.IsVisible = false;
            plot.Axes.SetLimits(0, Math.Max(1, counts.Max(c => c.Count)) * 1.12, -0.7, counts.Count - 0.3);
        }
    }

    private static void Bar(Plot plot, long count, double y)
    {
        var bar = plot.Add.Rectangle(0, count, y - 0.32, y + 0.32);
        bar.FillColor = PlotStyle.Seat.WithAlpha(.75);
        bar.LineWidth = 0;
        var text = plot.Add.Text(FormattableString.Invariant($" {count:#,0}"), count, y);
        text.LabelAlignment = Alignment.MiddleLeft;
        text.LabelFontName = PlotFont.Name;
        text.LabelFontSize = PlotStyle.TextSize - 1;
        text.LabelFontColor = PlotStyle.Ink;
    }
}
