using ScottPlot;
using SkiaSharp;

namespace GaitSeat.Study.Plots;

/// <summary>Panels of equal size in rows and columns, filled row by row, each under its title, and a note at the foot of the sheet.</summary>
internal sealed class PanelSheet : IDisposable
{
    private const float LeftPx = 84, RightPx = 24, TopPx = 44, BottomPx = 58, NotePx = 22;
    private readonly SheetSize _size;
    private readonly string _note;

    /// <param name="draw">Draws each panel.</param>
    /// <param name="leftPx">Room for the labels at the left.</param>
    /// <param name="note">What must be known of the data wherever the picture goes.</param>
    public PanelSheet(IReadOnlyList<Action<Plot>> draw, int columns, float leftPx = LeftPx, SheetSize? size = null, string note = "")
    {
        PlotFont.Use();
        (_size, _note) = (size ?? SheetSize.Large, note);
        var rows = (draw.Count + columns - 1) / columns;
        Plots.AddPlots(rows * columns);
        Plots.Layout = new ScottPlot.MultiplotLayouts.Grid(rows, columns);
        for (var i = 0; i < rows * columns; i++)
        {
            var plot = Plots.GetPlot(i);
            if (i >= draw.Count) plot.HideAxesAndGrid();
            else draw[i](plot);
            plot.Layout.Fixed(new PixelPadding(leftPx, RightPx, BottomPx, TopPx));
        }
    }

    public Multiplot Plots { get; } = new();

    public void Save(string pngPath, string svgPath)
    {
        PlotFiles.SavePng(Draw, _size, pngPath);
        PlotFiles.SaveSvg(Draw, _size, svgPath);
    }

    public void Dispose()
    {
        foreach (var plot in Plots.GetPlots()) plot.Dispose();
    }

    private void Draw(SKCanvas canvas)
    {
        var room = _note.Length > 0 ? NotePx : 0;
        Plots.Render(canvas, new PixelRect(0, _size.WidthPx, _size.HeightPx - room, 0));
        if (room > 0) SheetText.Draw(canvas, _note, LeftPx / 2, _size.HeightPx - NotePx / 3, PlotStyle.TextSize - 1, PlotStyle.Top);
    }
}
