using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Pictures;

/// <summary>A Skia drawing surface to carry packed RGB frames, which Skia itself cannot draw on. Used again for each frame of the same size.</summary>
internal sealed class RgbaCanvas : IDisposable
{
    private SKBitmap? _bitmap;

    public void Draw(Frame frame, Action<SKCanvas> draw)
    {
        var bitmap = Fit(frame);
        ToRgba(frame.Rgb, bitmap.GetPixelSpan());
        using (var canvas = new SKCanvas(bitmap)) draw(canvas);
        ToRgb(bitmap.GetPixelSpan(), frame.Rgb);
    }

    /// <summary>The frame as a Skia picture, to be encoded.</summary>
    public SKBitmap Copy(Frame frame)
    {
        var bitmap = Fit(frame);
        ToRgba(frame.Rgb, bitmap.GetPixelSpan());
        return bitmap;
    }

    public void Dispose() => _bitmap?.Dispose();

    private SKBitmap Fit(Frame frame)
    {
        if (_bitmap is { } same && same.Width == frame.WidthPx && same.Height == frame.HeightPx) return same;
        _bitmap?.Dispose();
        return _bitmap = new SKBitmap(new SKImageInfo(frame.WidthPx, frame.HeightPx, SKColorType.Rgba8888, SKAlphaType.Opaque));
    }

    private static void ToRgba(ReadOnlySpan<byte> rgb, Span<byte> rgba)
    {
        for (int from = 0, to = 0; from + 2 < rgb.Length; from += 3, to += 4)
        {
            rgba[to + 3] = byte.MaxValue;
            rgba[to + 2] = rgb[from + 2];
            rgba[to + 1] = rgb[from + 1];
            rgba[to] = rgb[from];
        }
    }

    private static void ToRgb(ReadOnlySpan<byte> rgba, Span<byte> rgb)
    {
        for (int from = 0, to = 0; to + 2 < rgb.Length; from += 4, to += 3)
        {
            rgb[to + 2] = rgba[from + 2];
            rgb[to + 1] = rgba[from + 1];
            rgb[to] = rgba[from];
        }
    }
}
