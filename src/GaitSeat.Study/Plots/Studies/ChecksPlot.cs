using ScottPlot;

namespace GaitSeat.Study.Plots.Studies;

/// <summary>Whether a model should be believed: residuals against a normal, how much each rider moves the answer, and what errors of the exposure do to it.</summary>
public static class ChecksPlot
{
    private static readonly SheetSize Size = new(1400, 520, 1.5f);

    /// <param name="quantiles">Standardised residuals against normal quantiles.</param>
    /// <param name="influence">Cook's distance of each rider, any order.</param>
    /// <param name="trend">Estimate at each amount of added error variance, and what it comes to without error at -1; empty without a sensitivity run.</param>
    public static void Save(IReadOnlyList<(double Normal, double Residual)> quantiles, IReadOnlyList<double> influence, IReadOnlyList<(double AddedVariance, double Estimate)> trend, string note, string pngPath, string svgPath)
    {
        Action<Plot>[] panels = trend.Count > 0 ? [Residuals, Influence, Trend] : [Residuals, Influence];
        using var sheet = new PanelSheet(panels, panels.Length, size: Size, note: note);
        sheet.Save(pngPath, svgPath);

        void Residuals(Plot plot)
        {
            StudyMarks.Frame(plot, "residuals", "normal quantile", "residual, in its SD");
            var ends = Math.Max(quantiles[^1].Normal, -quantiles[0].Normal);
            StudyMarks.Line(plot, -ends, -ends, ends, ends, PlotStyle.Cut, LinePattern.Dashed);
            StudyMarks.Points(plot, quantiles, PlotStyle.Seat, 4);
            StudyMarks.Limits(plot, [-ends, ends], [-ends, ends, .. quantiles.Select(q => q.Residual)]);
        }

        void Influence(Plot plot)
        {
            StudyMarks.Frame(plot, "each rider left out in turn", "rider, by influence", "Cook's distance");
            double[] sorted = [.. influence.Where(double.IsFinite).OrderDescending()];
            StudyMarks.Points(plot, [.. sorted.Select((c, i) => ((double)i + 1, c))], PlotStyle.Seat, 5);
            StudyMarks.Limits(plot, [0.5, sorted.Length + 0.5], [0, 1, .. sorted]);
            StudyMarks.Line(plot, 0, 1, sorted.Length + 1, 1, PlotStyle.Cut, LinePattern.Dashed);
        }

        void Trend(Plot plot)
        {
            StudyMarks.Frame(plot, "errors of the exposure", "added error variance (-1: none left)", "effect of the step");
            StudyMarks.Points(plot, [.. trend.Where(t => t.AddedVariance >= 0)], PlotStyle.Seat, PlotStyle.MarkerSize);
            StudyMarks.Points(plot, [.. trend.Where(t => t.AddedVariance < 0)], PlotStyle.Top, PlotStyle.MarkerSize + 2);
            StudyMarks.Limits(plot, [-1.1, .. trend.Select(t => t.AddedVariance)], [0, .. trend.Select(t => t.Estimate)]);
        }
    }
}
