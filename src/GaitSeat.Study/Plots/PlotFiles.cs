using System.Text;
using ScottPlot;
using SkiaSharp;

namespace GaitSeat.Study.Plots;

/// <summary>Writes a sheet of plots as a picture or as a drawing.</summary>
internal static class PlotFiles
{
    public const int WidthPx = 1400, HeightPx = 960;

    public static void SavePng(Multiplot plots, string path)
    {
        using var surface = SKSurface.Create(new SKImageInfo(WidthPx, HeightPx, SKColorType.Rgba8888, SKAlphaType.Premul));
        Render(plots, surface.Canvas);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        Publish(path, data.SaveTo);
    }

    public static void SaveSvg(Multiplot plots, string path)
    {
        using var drawn = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, WidthPx, HeightPx), drawn)) Render(plots, canvas);
        var svg = SvgIds.Renumber(Encoding.UTF8.GetString(drawn.ToArray()));
        Publish(path, file => file.Write(Encoding.UTF8.GetBytes(svg)));
    }

    private static void Render(Multiplot plots, SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        plots.Render(canvas, new PixelRect(0, WidthPx, HeightPx, 0));
    }

    private static void Publish(string path, Action<Stream> write)
    {
        var full = Path.GetFullPath(path);
        var part = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.part");
        using (var file = File.Create(part)) write(file);
        File.Move(part, full, overwrite: true);
    }
}
