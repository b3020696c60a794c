using ScottPlot;

namespace GaitSeat.Study.Plots.Studies;

/// <summary>A curve with its band.</summary>
/// <param name="X">Rising.</param>
public sealed record Band(double[] X, double[] Middle, double[] Low, double[] High);

/// <summary>What a dose–response picture shows.</summary>
/// <param name="Strides">Single strides, drawn faint; thinned by the caller where there are many.</param>
/// <param name="Means">Means of a rider at one length or on one day.</param>
public sealed record DosePicture(string Title, string XLabel, string YLabel, Band Curve, IReadOnlyList<(double X, double Y)> Strides, IReadOnlyList<(double X, double Y)> Means, string Note);

/// <summary>The mean of an outcome against the exposure with its 95 % band, over strides and means.</summary>
public static class DosePlot
{
    private static readonly SheetSize Size = new(900, 600, 2);

    public static void Save(DosePicture picture, string pngPath, string svgPath)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using var sheet = new PanelSheet([plot => Draw(plot, picture)], 1, size: Size, note: picture.Note);
        sheet.Save(pngPath, svgPath);
    }

    private static void Draw(Plot plot, DosePicture picture)
    {
        StudyMarks.Frame(plot, picture.Title, picture.XLabel, picture.YLabel);
        StudyMarks.Points(plot, picture.Strides, PlotStyle.Faint.WithAlpha(.25), 3);
        var band = plot.Add.FillY(picture.Curve.X, picture.Curve.Low, picture.Curve.High);
        band.FillColor = PlotStyle.Seat.WithAlpha(.18);
        band.LineStyle.Width = 0;
        StudyMarks.Points(plot, picture.Means, PlotStyle.Thigh.WithAlpha(.8), PlotStyle.MarkerSize);
        Marks.Line(plot, picture.Curve.X, picture.Curve.Middle, PlotStyle.Seat);
        StudyMarks.Limits(plot, [.. picture.Curve.X, .. picture.Strides.Concat(picture.Means).Select(p => p.X)], [.. picture.Curve.Low, .. picture.Curve.High, .. picture.Strides.Concat(picture.Means).Select(p => p.Y)]);
    }
}
