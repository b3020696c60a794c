using ScottPlot;

namespace GaitSeat.Study.Plots.Studies;

/// <summary>One plan that was tried.</summary>
/// <param name="Name">Of the line it belongs to, such as strides at each length.</param>
public readonly record struct PlanPoint(string Name, int Riders, double HalfWidth90, double PowerPct, double PowerLowPct, double PowerHighPct);

/// <summary>Precision and power against the number of riders.</summary>
public static class PlanPlot
{
    private static readonly SheetSize Size = new(1400, 560, 1.5f);
    private static readonly Color[] Lines = [PlotStyle.Seat, PlotStyle.Top, PlotStyle.Thigh, PlotStyle.Cut, PlotStyle.Faint];

    /// <param name="wanted">The half width that is wanted; 0 draws no line.</param>
    public static void Save(IReadOnlyList<PlanPoint> points, double wanted, string unit, string note, string pngPath, string svgPath)
    {
        var lines = points.GroupBy(p => p.Name).Select(g => g.OrderBy(p => p.Riders).ToArray()).ToArray();
        using var sheet = new PanelSheet([Precision, Power], 2, size: Size, note: note);
        sheet.Save(pngPath, svgPath);

        void Precision(Plot plot)
        {
            StudyMarks.Frame(plot, "half width of the 95 % interval, nine seasons in ten", "riders", unit);
            if (wanted > 0) plot.Add.HorizontalLine(wanted, PlotStyle.CutWidth, PlotStyle.Cut, LinePattern.Dashed);
            Draw(plot, p => p.HalfWidth90);
            StudyMarks.Limits(plot, [.. points.Select(p => (double)p.Riders)], [0, wanted, .. points.Select(p => p.HalfWidth90)]);
        }

        void Power(Plot plot)
        {
            StudyMarks.Frame(plot, "power: seasons whose interval leaves zero out", "riders", "%");
            Draw(plot, p => p.PowerPct);
            foreach (var (line, i) in lines.Select((l, i) => (l, i)))
                foreach (var p in line) StudyMarks.Line(plot, p.Riders, p.PowerLowPct, p.Riders, p.PowerHighPct, Lines[i % Lines.Length], LinePattern.Solid);
            StudyMarks.Limits(plot, [.. points.Select(p => (double)p.Riders)], [0, 100]);
        }

        void Draw(Plot plot, Func<PlanPoint, double> value)
        {
            foreach (var (line, i) in lines.Select((l, i) => (l, i)))
            {
                var drawn = plot.Add.Scatter(line.Select(p => (double)p.Riders).ToArray(), line.Select(value).ToArray(), Lines[i % Lines.Length]);
                drawn.LegendText = line[0].Name;
            }

            plot.Legend.FontName = PlotFont.Name;
            plot.ShowLegend();
        }
    }
}
