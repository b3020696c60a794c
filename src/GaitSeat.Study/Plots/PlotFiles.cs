using System.Text;
using GaitSeat.Model;
using ScottPlot;
using SkiaSharp;

namespace GaitSeat.Study.Plots;

/// <summary>Size of a sheet as it is drawn; a PNG has <paramref name="PngScale"/> px for each.</summary>
internal readonly record struct SheetSize(int WidthPx, int HeightPx, float PngScale = 1)
{
    public static SheetSize Large => new(1400, 960);
}

/// <summary>Writes a drawing as PNG and as SVG.</summary>
internal static class PlotFiles
{
    public static void Save(Multiplot plots, SheetSize size, string pngPath, string svgPath)
    {
        SavePng(plots, size, pngPath);
        SaveSvg(plots, size, svgPath);
    }

    public static void SavePng(Multiplot plots, SheetSize size, string path) => SavePng(canvas => Render(plots, size, canvas), size, path);

    public static void SaveSvg(Multiplot plots, SheetSize size, string path) => SaveSvg(canvas => Render(plots, size, canvas), size, path);

    public static void SavePng(Action<SKCanvas> draw, SheetSize size, string path)
    {
        using var surface = SKSurface.Create(new SKImageInfo((int)(size.WidthPx * size.PngScale), (int)(size.HeightPx * size.PngScale), SKColorType.Rgba8888, SKAlphaType.Premul));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(size.PngScale);
        draw(surface.Canvas);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        AtomicFile.WriteBytes(path, data.SaveTo);
    }

    public static void SaveSvg(Action<SKCanvas> draw, SheetSize size, string path)
    {
        using var drawn = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, size.WidthPx, size.HeightPx), drawn))
        {
            canvas.Clear(SKColors.White);
            draw(canvas);
        }

        var svg = SvgIds.Renumber(Encoding.UTF8.GetString(drawn.ToArray()));
        AtomicFile.WriteText(path, svg);
    }

    private static void Render(Multiplot plots, SheetSize size, SKCanvas canvas) => plots.Render(canvas, new PixelRect(0, size.WidthPx, size.HeightPx, 0));
}
