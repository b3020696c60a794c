using GaitSeat.Model;
using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>Three panels over one time axis: seat motion, rise of each stride, thigh angle.</summary>
internal sealed class PlotSheet : IDisposable
{
    /// <summary>Left and right room for axis labels, px; the same on all panels so that their times line up.</summary>
    private const float LeftPx = 84, RightPx = 28;

    private const float TopPx = 14, TitleTopPx = 66, BottomPx = 30, LabelBottomPx = 58;
    private const string Caption = "Time, s.   Vertical lines: sit instants.   Triangles: tops.   Whiskers: 95 % intervals.";
    private static readonly float[] Shares = [0.42f, 0.29f, 0.29f];

    public PlotSheet(ClipMotion motion, string title)
    {
        PlotFont.Use();
        Plots.AddPlots(Shares.Length);
        Plots.Layout = new SharedRows(Shares);
        Plot[] panels = [.. Enumerable.Range(0, Shares.Length).Select(i => Plots.GetPlot(i))];
        SeatPanel.Draw(panels[0], motion);
        RisePanel.Draw(panels[1], motion);
        ThighPanel.Draw(panels[2], motion);
        PlotStyle.Title(panels[0], title);
        PlotStyle.HorizontalLabel(panels[^1], Caption);
        var (first, last) = TimeRange(motion.Trace.TimeSeconds);
        for (var i = 0; i < panels.Length; i++)
        {
            panels[i].Axes.SetLimitsX(first, last);
            panels[i].Layout.Fixed(new PixelPadding(LeftPx, RightPx, i == panels.Length - 1 ? LabelBottomPx : BottomPx, i == 0 ? TitleTopPx : TopPx));
        }
    }

    public Multiplot Plots { get; } = new();

    public void Dispose()
    {
        foreach (var plot in Plots.GetPlots()) plot.Dispose();
    }

    private static (double First, double Last) TimeRange(double[] times) =>
        times.Length > 1 ? (times[0], times[^1]) : (0, 1);
}
