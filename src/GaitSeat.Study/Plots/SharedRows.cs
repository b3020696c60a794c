using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>Panels one under the other, each with its share of the height.</summary>
internal sealed class SharedRows(float[] shares) : IMultiplotLayout
{
    public PixelRect[] GetSubplotRectangles(SubplotCollection subplots, PixelRect figureRect)
    {
        var rows = new PixelRect[shares.Length];
        var top = figureRect.Top;
        for (var i = 0; i < rows.Length; i++)
        {
            var bottom = top + figureRect.Height * shares[i];
            rows[i] = new PixelRect(figureRect.Left, figureRect.Right, bottom, top);
            top = bottom;
        }

        return rows;
    }
}
