using GaitSeat.Model;
using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>Thigh angle over time, with its value at each sit and its 95 % interval.</summary>
internal static class ThighPanel
{
    private const double Room = 0.1;

    public static void Draw(Plot plot, ClipMotion motion)
    {
        PlotStyle.Apply(plot, "Thigh angle, deg");
        Marks.Spells(plot, motion.Spells);
        Marks.Cuts(plot, motion.Strides);
        Marks.Line(plot, motion.Trace.TimeSeconds, motion.Trace.ThighAngleDeg, PlotStyle.Thigh);
        foreach (var stride in motion.Strides) Marks.Whisker(plot, stride.StartSeconds, stride.Measures[StrideMeasure.ThighAngleSit], PlotStyle.ThighSit);
        var known = motion.Trace.ThighAngleDeg.Concat(motion.Strides.SelectMany(s => Marks.Ends(s.Measures[StrideMeasure.ThighAngleSit]))).Where(double.IsFinite).ToArray();
        if (known.Length == 0)
        {
            Marks.Empty(plot, "No thigh angle was measured");
            plot.Axes.SetLimitsY(0, 1);
            return;
        }

        var range = Math.Max(known.Max() - known.Min(), 1);
        plot.Axes.SetLimitsY(known.Min() - range * Room, known.Max() + range * Room);
    }
}
