using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>Segments and points of the near side. A segment with a missing end is not drawn.</summary>
internal sealed class BodyLayer : IDisposable
{
    private static readonly (BodyPoint From, BodyPoint To, SKColor Colour)[] Segments =
    [
        (BodyPoint.Shoulder, BodyPoint.Elbow, Palette.Paper),
        (BodyPoint.Elbow, BodyPoint.Wrist, Palette.Paper),
        (BodyPoint.Shoulder, BodyPoint.Hip, Palette.Paper),
        (BodyPoint.Knee, BodyPoint.Ankle, Palette.Paper),
        (BodyPoint.Ankle, BodyPoint.Heel, Palette.Foot),
        (BodyPoint.Heel, BodyPoint.Toe, Palette.Foot),
        (BodyPoint.Hip, BodyPoint.Knee, Palette.Seat),
    ];

    private static readonly (BodyPoint Point, SKColor Colour, float Radius)[] Dots =
    [
        (BodyPoint.Shoulder, Palette.Paper, 4.5f),
        (BodyPoint.Elbow, Palette.Paper, 4),
        (BodyPoint.Wrist, Palette.Paper, 4),
        (BodyPoint.Ankle, Palette.Paper, 4),
        (BodyPoint.Knee, Palette.Seat, 5),
        (BodyPoint.Hip, Palette.Seat, 6),
    ];

    private const float LineWidth = 3.2f, CasingWidth = 1.4f, TreadRadius = 4;
    private readonly Pens _pens = new();

    public void Draw(SKCanvas canvas, PaintView view)
    {
        var scale = view.FigureScale;
        foreach (var (from, to, colour) in Segments)
        {
            if (view.Point(from) is { } a && view.Point(to) is { } b) _pens.CasedLine(canvas, a, b, colour, LineWidth * scale, CasingWidth * scale);
        }

        foreach (var (point, colour, radius) in Dots)
        {
            if (view.Point(point) is { } at) _pens.Dot(canvas, at, colour, radius * scale, CasingWidth * scale);
        }

        if (view.Tread is { } tread) _pens.Dot(canvas, tread, Palette.Foot, TreadRadius * scale, CasingWidth * scale);
    }

    public void Dispose() => _pens.Dispose();
}
