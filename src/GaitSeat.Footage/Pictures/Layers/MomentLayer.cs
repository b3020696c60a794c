using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>A ring about the hip and a word behind it, at the instants of sit and top.</summary>
internal sealed class MomentLayer : IDisposable
{
    private const float RingRadius = 15, RingWidth = 3.4f, CasingWidth = 1.4f, TextPx = 18, WordBehindPx = 62;
    private readonly Pens _pens = new();

    public void Draw(SKCanvas canvas, PaintView view)
    {
        if (view.Point(BodyPoint.Hip) is not { } hip || Word(view) is not { } word) return;
        var (scale, figure) = (view.Scale, view.FigureScale);
        var colour = word == "SIT" ? Palette.Seat : Palette.Plumb;
        canvas.DrawCircle(hip, RingRadius * figure, _pens.Line(Palette.Casing, (RingWidth + 2 * CasingWidth) * figure));
        canvas.DrawCircle(hip, RingRadius * figure, _pens.Line(colour, RingWidth * figure));
        _pens.Plate(canvas, word, new(hip.X - view.Forward * WordBehindPx * scale, hip.Y), TextPx * scale, Palette.Ink, colour,
            new SKRect(0, 0, view.WidthPx, (float)view.StripTop));
    }

    private static string? Word(PaintView view)
    {
        bool Now(double at) => Math.Abs(view.Scene.TimeSeconds - at) <= view.Settings.FlashSeconds;
        foreach (var stride in view.Scene.Strides)
        {
            if (Now(stride.StartSeconds) || Now(stride.EndSeconds)) return "SIT";
            if (Now(stride.TopSeconds)) return "TOP";
        }

        return null;
    }

    public void Dispose() => _pens.Dispose();
}
