using ScottPlot;
using SkiaSharp;

namespace GaitSeat.Study.Plots;

/// <summary>Lines of text drawn straight onto a sheet, in the shipped typeface.</summary>
internal static class SheetText
{
    public static void Draw(SKCanvas canvas, string text, float x, float y, float size, Color colour, bool bold = false)
    {
        using var font = Font(size, bold);
        using var paint = new SKPaint { Color = new(colour.ARGB), IsAntialias = true };
        canvas.DrawText(text, x, y, SKTextAlign.Left, font, paint);
    }

    /// <summary>Breaks a text between words so that no line is wider than allowed.</summary>
    public static IReadOnlyList<string> Wrap(string text, float widthPx, float size)
    {
        using var font = Font(size, bold: false);
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && font.MeasureText(longer) > widthPx)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        return [.. lines, line];
    }

    private static SKFont Font(float size, bool bold) => new(PlotFont.Typeface(bold), size);
}
