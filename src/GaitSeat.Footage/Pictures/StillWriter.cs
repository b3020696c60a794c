using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Pictures;

/// <summary>Writes a frame as a picture. The file appears whole or not at all; one of that name is replaced.</summary>
public static class StillWriter
{
    /// <summary>JPEG quality, percent: no visible blocks around thin lines at 1280 px, by eye.</summary>
    private const int JpegQuality = 90;

    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void SavePng(Frame frame, string path) => Save(frame, path, SKEncodedImageFormat.Png, 100);

    /// <inheritdoc cref="SavePng"/>
    public static void SaveJpeg(Frame frame, string path) => Save(frame, path, SKEncodedImageFormat.Jpeg, JpegQuality);

    private static void Save(Frame frame, string path, SKEncodedImageFormat format, int quality)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentException.ThrowIfNullOrEmpty(path);
        using var canvas = new RgbaCanvas();
        using var data = canvas.Copy(frame).Encode(format, quality)
            ?? throw new IOException($"'{path}': a picture of {frame.WidthPx} x {frame.HeightPx} px could not be encoded as {format}.");
        var full = Path.GetFullPath(path);
        var part = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.part");
        using (var file = File.Create(part)) data.SaveTo(file);
        File.Move(part, full, overwrite: true);
    }
}
