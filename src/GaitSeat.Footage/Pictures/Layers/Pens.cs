using SkiaSharp;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>The drawing tools of a layer: cased lines and text that stay readable on any ground.</summary>
internal sealed class Pens : IDisposable
{
    private readonly SKPaint _line = new() { IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeCap = SKStrokeCap.Round, StrokeJoin = SKStrokeJoin.Round };
    private readonly SKPaint _fill = new() { IsAntialias = true, Style = SKPaintStyle.Fill };
    private readonly SKFont _regular = new(PictureFonts.Regular) { Subpixel = true, Edging = SKFontEdging.Antialias };
    private readonly SKFont _bold = new(PictureFonts.SemiBold) { Subpixel = true, Edging = SKFontEdging.Antialias };

    public SKPaint Line(SKColor colour, float width)
    {
        _line.Color = colour;
        _line.StrokeWidth = width;
        return _line;
    }

    public SKPaint Fill(SKColor colour)
    {
        _fill.Color = colour;
        return _fill;
    }

    /// <summary>A line with a dark casing on either side.</summary>
    public void CasedLine(SKCanvas canvas, SKPoint from, SKPoint to, SKColor colour, float width, float casing)
    {
        canvas.DrawLine(from, to, Line(Palette.Casing, width + 2 * casing));
        canvas.DrawLine(from, to, Line(colour, width));
    }

    public void Dot(SKCanvas canvas, SKPoint at, SKColor colour, float radius, float casing)
    {
        canvas.DrawCircle(at, radius + casing, Fill(Palette.Casing));
        canvas.DrawCircle(at, radius, Fill(colour));
    }

    public SKFont Font(float size, bool bold = false)
    {
        var font = bold ? _bold : _regular;
        font.Size = size;
        return font;
    }

    /// <summary>Text on a rounded plate, its middle at a point that is moved inside the picture where needed.</summary>
    public void Plate(SKCanvas canvas, string text, SKPoint middle, float size, SKColor ink, SKColor ground, SKRect inside)
    {
        var font = Font(size, bold: true);
        var width = font.MeasureText(text) + size;
        var height = size * 1.5f;
        var x = Math.Clamp(middle.X - width / 2, inside.Left, Math.Max(inside.Left, inside.Right - width));
        var y = Math.Clamp(middle.Y - height / 2, inside.Top, Math.Max(inside.Top, inside.Bottom - height));
        canvas.DrawRoundRect(x, y, width, height, height / 2, height / 2, Fill(ground));
        canvas.DrawText(text, x + width / 2, y + height / 2 + size * CapHalf, SKTextAlign.Center, font, Fill(ink));
    }

    public void Dispose()
    {
        _line.Dispose();
        _fill.Dispose();
        _regular.Dispose();
        _bold.Dispose();
    }

    /// <summary>Half the height of Inter's capitals over its size (cap height 0.727).</summary>
    public const float CapHalf = 0.364f;
}
