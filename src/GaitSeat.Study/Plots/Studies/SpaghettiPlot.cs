using ScottPlot;

namespace GaitSeat.Study.Plots.Studies;

/// <summary>Each rider's own line over the lengths the rider was seen at, with the line of all.</summary>
public static class SpaghettiPlot
{
    private static readonly SheetSize Size = new(900, 600, 2);

    /// <param name="riders">One line a rider.</param>
    /// <param name="means">Means the lines go through.</param>
    public static void Save(
        string title, string xLabel, string yLabel, IReadOnlyList<(double[] X, double[] Y)> riders, IReadOnlyList<(double X, double Y)> means, (double[] X, double[] Y) all, string note, string pngPath, string svgPath)
    {
        using var sheet = new PanelSheet([Draw], 1, size: Size, note: note);
        sheet.Save(pngPath, svgPath);

        void Draw(Plot plot)
        {
            StudyMarks.Frame(plot, title, xLabel, yLabel);
            StudyMarks.Points(plot, means, PlotStyle.Thigh.WithAlpha(.5), PlotStyle.MarkerSize - 2);
            var alpha = riders.Count > 60 ? .25 : .7;
            foreach (var (x, y) in riders) Marks.Line(plot, x, y, PlotStyle.Faint.WithAlpha(alpha));
            var line = plot.Add.ScatterLine(all.X, all.Y, PlotStyle.Seat);
            line.LineWidth = 2 * PlotStyle.LineWidth;
            StudyMarks.Limits(plot, [.. riders.SelectMany(r => r.X), .. means.Select(m => m.X), .. all.X], [.. riders.SelectMany(r => r.Y), .. means.Select(m => m.Y), .. all.Y]);
        }
    }
}
