using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>Panels of equal size in rows and columns, filled row by row, under one title.</summary>
internal sealed class PanelSheet : IDisposable
{
    private const float LeftPx = 84, RightPx = 24, TopPx = 44, BottomPx = 58;

    /// <param name="draw">Draws each panel.</param>
    /// <param name="leftPx">Room for the labels at the left.</param>
    public PanelSheet(IReadOnlyList<Action<Plot>> draw, int columns, float leftPx = LeftPx)
    {
        PlotFont.Use();
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
        PlotFiles.SavePng(Plots, pngPath);
        PlotFiles.SaveSvg(Plots, svgPath);
    }

    public void Dispose()
    {
        foreach (var plot in Plots.GetPlots()) plot.Dispose();
    }
}
