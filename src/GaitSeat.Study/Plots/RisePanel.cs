using GaitSeat.Model;
using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>Rise height of each stride with its 95 % interval, in cm where every stride that has a rise has it in cm, else in percent of leg length.</summary>
internal static class RisePanel
{
    private const double Room = 0.12;

    public static void Draw(Plot plot, ClipMotion motion)
    {
        var measure = Unit(motion.Strides);
        PlotStyle.Apply(plot, measure == StrideMeasure.RiseHeightCm ? "Rise, cm" : "Rise, % of leg");
        Marks.Spells(plot, motion.Spells);
        Marks.Cuts(plot, motion.Strides);
        var ends = new List<double>();
        foreach (var stride in motion.Strides)
        {
            var rise = stride.Measures[measure];
            if (rise.IsMissing) continue;
            Marks.Whisker(plot, stride.TopSeconds, rise, PlotStyle.Top);
            ends.AddRange(Marks.Ends(rise));
        }

        if (ends.Count == 0) Marks.Empty(plot, "No stride was measured");
        plot.Axes.SetLimitsY(0, ends.Count == 0 ? 1 : ends.Max() * (1 + Room));
    }

    private static StrideMeasure Unit(IReadOnlyList<Stride> strides) =>
        strides.Any(s => !s.Measures[StrideMeasure.RiseHeightCm].IsMissing)
        && strides.All(s => s.Measures[StrideMeasure.RiseHeightPctLeg].IsMissing || !s.Measures[StrideMeasure.RiseHeightCm].IsMissing)
            ? StrideMeasure.RiseHeightCm
            : StrideMeasure.RiseHeightPctLeg;
}
