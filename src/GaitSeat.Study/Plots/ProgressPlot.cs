using GaitSeat.Model;
using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>A measure of one rider by day, each with its 95 % interval.</summary>
public static class ProgressPlot
{
    private const int LeastTicks = 2;
    private static readonly SheetSize Size = new(760, 320);

    /// <param name="days">In order; at least one.</param>
    public static void SaveSvg(string yLabel, IReadOnlyList<(DateOnly Day, Measured Value)> days, string svgPath)
    {
        ArgumentNullException.ThrowIfNull(days);
        ArgumentOutOfRangeException.ThrowIfZero(days.Count);
        using var sheet = new PanelSheet([Draw], 1, size: Size);
        PlotFiles.SaveSvg(sheet.Plots, Size, svgPath);

        void Draw(Plot plot)
        {
            PlotStyle.Apply(plot, yLabel);
            double[] x = [.. days.Select(d => (double)d.Day.DayNumber)];
            Marks.Line(plot, x, [.. days.Select(d => d.Value.Value)], PlotStyle.Faint);
            foreach (var (day, value) in days) Marks.Whisker(plot, day.DayNumber, value, PlotStyle.Seat);
            double[] ends = [.. days.SelectMany(d => Marks.Ends(d.Value))];
            var (low, high) = (ends.Min(), ends.Max());
            var (room, side) = (Math.Max(high - low, 1) * 0.1, Math.Max(1, (x[^1] - x[0]) * 0.08));
            plot.Axes.SetLimits(x[0] - side, x[^1] + side, low - room, high + room);
            var step = Math.Max(1, x.Length / (2 * LeastTicks + 2));
            var shown = x.Where((_, i) => i % step == 0 || i == x.Length - 1).ToArray();
            plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericManual(shown, [.. shown.Select(d => DateOnly.FromDayNumber((int)d).ToString("d MMM", System.Globalization.CultureInfo.InvariantCulture))]);
        }
    }
}
