using GaitSeat.Model;
using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>What several panels share: shaded spells, stride cuts, lines with gaps.</summary>
internal static class Marks
{
    public static void Spells(Plot plot, IReadOnlyList<Spell> spells)
    {
        foreach (var spell in spells)
        {
            var span = plot.Add.HorizontalSpan(spell.StartSeconds, spell.EndSeconds);
            span.FillStyle.Color = PlotStyle.Shade(spell.Gait);
            span.LineStyle.Width = 0;
        }
    }

    /// <summary>One line at each sit instant; where a stride ends as the next begins there is one line, not two.</summary>
    public static void Cuts(Plot plot, IReadOnlyList<Stride> strides)
    {
        foreach (var at in strides.SelectMany(s => new[] { s.StartSeconds, s.EndSeconds }).Distinct().Order())
        {
            var line = plot.Add.VerticalLine(at, PlotStyle.CutWidth, PlotStyle.Cut);
            line.EnableAutoscale = false;
        }
    }

    public static void Line(Plot plot, double[] times, double[] values, Color colour)
    {
        foreach (var (t, v) in Runs.Of(times, values))
        {
            var line = plot.Add.ScatterLine(t, v, colour);
            line.LineWidth = PlotStyle.LineWidth;
        }
    }

    /// <summary>A point with its 95 % whisker.</summary>
    public static void Whisker(Plot plot, double time, Measured value, Color colour)
    {
        if (value.IsMissing) return;
        if (value.StandardError > 0)
        {
            var bar = plot.Add.ErrorBar([time], [value.Value], [value.HalfWidth95]);
            bar.Color = colour;
        }

        plot.Add.Marker(time, value.Value, MarkerShape.FilledCircle, PlotStyle.MarkerSize, colour);
    }

    /// <summary>Lower and upper end of a value's whisker; the value itself where it has no error, NaN where it is missing.</summary>
    public static double[] Ends(Measured value)
    {
        var half = double.IsNaN(value.StandardError) ? 0 : value.HalfWidth95;
        return [value.Value - half, value.Value + half];
    }

    /// <summary>Says in words that there is nothing to draw.</summary>
    public static void Empty(Plot plot, string text)
    {
        var note = plot.Add.Annotation(text, Alignment.MiddleCenter);
        note.LabelFontName = PlotFont.Name;
        note.LabelFontColor = PlotStyle.Faint;
        note.LabelBackgroundColor = Colors.Transparent;
        note.LabelBorderWidth = 0;
        note.LabelShadowColor = Colors.Transparent;
        note.LabelFontSize = PlotStyle.TextSize;
    }
}
