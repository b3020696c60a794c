using GaitSeat.Model;
using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>Seat height over the horse's trunk, with the cuts at the sits, the tops, and the spells named above.</summary>
internal static class SeatPanel
{
    /// <summary>Room above and below the curve as a share of its range; above more, for the names of the spells.</summary>
    private const double RoomBelow = 0.08, RoomAbove = 0.25;

    /// <summary>How far above the curve the mark of a top hangs, share of the range.</summary>
    private const double TopAbove = 0.05;

    public static void Draw(Plot plot, ClipMotion motion)
    {
        PlotStyle.Apply(plot, "Seat height, % of leg");
        Marks.Spells(plot, motion.Spells);
        Marks.Cuts(plot, motion.Strides);
        var (times, seat) = (motion.Trace.TimeSeconds, motion.Trace.SeatPctLeg);
        Marks.Line(plot, times, seat, PlotStyle.Seat);
        var known = seat.Where(double.IsFinite).ToArray();
        if (known.Length == 0)
        {
            Marks.Empty(plot, "No seat motion was measured");
            plot.Axes.SetLimitsY(0, 1);
            Names(plot, motion.Spells, 1);
            return;
        }

        var range = Math.Max(known.Max() - known.Min(), 1);
        var top = known.Max() + range * RoomAbove;
        plot.Axes.SetLimitsY(known.Min() - range * RoomBelow, top);
        Tops(plot, motion, range * TopAbove);
        Names(plot, motion.Spells, top);
    }

    private static void Tops(Plot plot, ClipMotion motion, double above)
    {
        var (times, seat) = (motion.Trace.TimeSeconds, motion.Trace.SeatPctLeg);
        foreach (var stride in motion.Strides)
        {
            var nearest = Nearest(times, stride.TopSeconds);
            if (nearest >= 0 && double.IsFinite(seat[nearest]))
                plot.Add.Marker(stride.TopSeconds, seat[nearest] + above, MarkerShape.FilledTriangleDown, PlotStyle.MarkerSize, PlotStyle.Top).MarkerStyle.OutlineWidth = 0;
        }
    }

    private static int Nearest(double[] times, double time)
    {
        if (times.Length == 0) return -1;
        var at = Array.BinarySearch(times, time);
        if (at >= 0) return at;
        at = ~at;
        if (at == 0) return 0;
        if (at == times.Length) return at - 1;
        return time - times[at - 1] < times[at] - time ? at - 1 : at;
    }

    private static void Names(Plot plot, IReadOnlyList<Spell> spells, double top)
    {
        foreach (var spell in spells)
        {
            var name = plot.Add.Text(PlotStyle.Name(spell.Gait), (spell.StartSeconds + spell.EndSeconds) / 2, top);
            name.LabelFontName = PlotFont.Name;
            name.LabelFontSize = PlotStyle.TextSize;
            name.LabelFontColor = PlotStyle.Ink;
            name.LabelAlignment = Alignment.UpperCenter;
            name.OffsetY = 6;
        }
    }
}
