using System.Globalization;
using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>The thigh angle: an arc from straight down to the thigh, and its number before the knee.</summary>
internal sealed class ThighLayer : IDisposable
{
    /// <summary>Radius of the arc over the length of the thigh.</summary>
    private const float RadiusShare = 0.5f;

    /// <summary>Where the number stands: before the knee and a little above it, clear of the leg, px at design size.</summary>
    private const float NumberAheadPx = 44, NumberAbovePx = 6;

    /// <summary>Screen angle of straight down in Skia's arcs, deg clockwise from right.</summary>
    private const float DownDeg = 90;

    private const float LineWidth = 2.6f, CasingWidth = 1.2f, TextPx = 21;
    private const byte WedgeAlpha = 0x4C;
    private readonly Pens _pens = new();

    public void Draw(SKCanvas canvas, PaintView view)
    {
        if (view.Point(BodyPoint.Hip) is not { } hip || view.Point(BodyPoint.Knee) is not { } knee) return;
        var angle = (float)view.Scene.Trace.ThighAngleDeg[view.Scene.TraceIndex];
        if (float.IsNaN(angle)) return;
        var length = SKPoint.Distance(hip, knee);
        DrawArc(canvas, view, hip, length * RadiusShare, angle);
        var at = new SKPoint(knee.X + view.Forward * NumberAheadPx * view.Scale, knee.Y - NumberAbovePx * view.Scale);
        _pens.Plate(canvas, angle.ToString("0", CultureInfo.InvariantCulture) + "°", at, TextPx * view.Scale, Palette.Seat, Palette.Panel,
            new SKRect(0, 0, view.WidthPx, (float)view.StripTop));
    }

    private void DrawArc(SKCanvas canvas, PaintView view, SKPoint hip, float radius, float angle)
    {
        var oval = new SKRect(hip.X - radius, hip.Y - radius, hip.X + radius, hip.Y + radius);
        var sweep = -view.Forward * angle;
        canvas.DrawArc(oval, DownDeg, sweep, true, _pens.Fill(Palette.Seat.WithAlpha(WedgeAlpha)));
        canvas.DrawArc(oval, DownDeg, sweep, false, _pens.Line(Palette.Casing, (LineWidth + 2 * CasingWidth) * view.FigureScale));
        canvas.DrawArc(oval, DownDeg, sweep, false, _pens.Line(Palette.Seat, LineWidth * view.FigureScale));
    }

    public void Dispose() => _pens.Dispose();
}
