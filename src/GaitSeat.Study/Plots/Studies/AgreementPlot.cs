using ScottPlot;

namespace GaitSeat.Study.Plots.Studies;

/// <summary>A level with the ends of its interval.</summary>
public readonly record struct LevelLine(string Name, double Value, double Low, double High);

/// <summary>Bland and Altman's picture (difference over mean, with bias and limits), and beside it one method over the other with Deming's line.</summary>
public static class AgreementPlot
{
    private static readonly SheetSize Size = new(1400, 620, 1.5f);

    /// <param name="pairs">First and second value.</param>
    /// <param name="lines">Bias and limits of agreement.</param>
    /// <param name="deming">The line second = intercept + slope × first.</param>
    public static void Save(
        string title, string first, string second, IReadOnlyList<(double First, double Second)> pairs, IReadOnlyList<LevelLine> lines, (double Intercept, double Slope) deming, string note, string pngPath, string svgPath)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        using var sheet = new PanelSheet([Differences, Line], 2, size: Size, note: note);
        sheet.Save(pngPath, svgPath);

        void Differences(Plot plot)
        {
            StudyMarks.Frame(plot, title, $"mean of both, {first}", "first less second");
            foreach (var line in lines) Level(plot, line);
            StudyMarks.Points(plot, [.. pairs.Select(p => ((p.First + p.Second) / 2, p.First - p.Second))], PlotStyle.Seat.WithAlpha(.6), PlotStyle.MarkerSize - 1);
            StudyMarks.Limits(plot, [.. pairs.Select(p => (p.First + p.Second) / 2)], [.. pairs.Select(p => p.First - p.Second), .. lines.SelectMany(l => new[] { l.Low, l.High })]);
            foreach (var line in lines) Name(plot, line);
        }

        void Line(Plot plot)
        {
            StudyMarks.Frame(plot, "dashed: equality; solid: Deming's line", first, second);
            double[] all = [.. pairs.SelectMany(p => new[] { p.First, p.Second })];
            var (low, high) = (all.Min(), all.Max());
            StudyMarks.Line(plot, low, low, high, high, PlotStyle.Cut, LinePattern.Dashed);
            StudyMarks.Points(plot, pairs, PlotStyle.Seat.WithAlpha(.6), PlotStyle.MarkerSize - 1);
            Marks.Line(plot, [low, high], [deming.Intercept + deming.Slope * low, deming.Intercept + deming.Slope * high], PlotStyle.Top);
            StudyMarks.Limits(plot, [low, high], [low, high, deming.Intercept + deming.Slope * low, deming.Intercept + deming.Slope * high]);
        }
    }

    private static void Level(Plot plot, LevelLine line)
    {
        var span = plot.Add.VerticalSpan(line.Low, line.High);
        span.FillStyle.Color = PlotStyle.Cut.WithAlpha(.13);
        span.LineStyle.Width = 0;
        plot.Add.HorizontalLine(line.Value, PlotStyle.CutWidth, PlotStyle.Cut, line.Name == ErrorLines.Bias ? LinePattern.Solid : LinePattern.Dashed);
    }

    private static void Name(Plot plot, LevelLine line)
    {
        var text = plot.Add.Text(FormattableString.Invariant($"{line.Name} {line.Value:+0.00;-0.00;0.00}"), plot.Axes.GetLimits().Right, line.Value);
        text.LabelAlignment = Alignment.LowerRight;
        text.LabelFontName = PlotFont.Name;
        text.LabelFontSize = PlotStyle.TextSize - 1;
        text.LabelFontColor = PlotStyle.Ink;
    }
}
