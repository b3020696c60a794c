using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>The vertical line through the hip that ear, shoulder and heel are held against.</summary>
internal sealed class PlumbLayer : IDisposable
{
    /// <summary>How far the line reaches past the highest and lowest point, in trunk lengths.</summary>
    private const float Beyond = 0.25f;

    private const float LineWidth = 2, CasingWidth = 1.2f;
    private readonly Pens _pens = new();

    public void Draw(SKCanvas canvas, PaintView view)
    {
        if (view.Point(BodyPoint.Hip) is not { } hip) return;
        var heights = Enum.GetValues<BodyPoint>().Select(view.Point).OfType<SKPoint>().Select(p => p.Y).ToArray();
        var trunk = view.Point(BodyPoint.Shoulder) is { } shoulder ? SKPoint.Distance(shoulder, hip) : 0;
        var from = new SKPoint(hip.X, Math.Max(0, heights.Min() - trunk * Beyond));
        var to = new SKPoint(hip.X, Math.Min((float)view.StripTop, heights.Max() + trunk * Beyond));
        _pens.CasedLine(canvas, from, to, Palette.Plumb, LineWidth * view.FigureScale, CasingWidth * view.FigureScale);
    }

    public void Dispose() => _pens.Dispose();
}
