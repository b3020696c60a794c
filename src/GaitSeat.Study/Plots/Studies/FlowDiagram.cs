using ScottPlot;
using SkiaSharp;

namespace GaitSeat.Study.Plots.Studies;

/// <summary>A box of a flow diagram: what is there at this step, and what the step before it left out.</summary>
/// <param name="LeftOut">One line a reason; empty where nothing was.</param>
public sealed record FlowBox(string Kept, IReadOnlyList<string> LeftOut);

/// <summary>From the clips to the strides that are analysed: kept to the left from top to bottom, left out to the right.</summary>
public static class FlowDiagram
{
    private const int WidthPx = 900;
    private const float MarginPx = 24, KeptWidthPx = 380, LeftOutXPx = 460, LeftOutWidthPx = 416, LinePx = 19, PadPx = 12, GapPx = 26, TextPx = 14, NotePx = 24;

    public static void Save(IReadOnlyList<FlowBox> boxes, string note, string pngPath, string svgPath)
    {
        ArgumentNullException.ThrowIfNull(boxes);
        PlotFont.Use();
        var rows = boxes.Select(b => (Kept: SheetText.Wrap(b.Kept, KeptWidthPx - 2 * PadPx, TextPx), LeftOut: b.LeftOut.SelectMany(l => SheetText.Wrap(l, LeftOutWidthPx - 2 * PadPx, TextPx)).ToArray())).ToArray();
        var height = MarginPx + rows.Sum(r => Height(r.Kept, r.LeftOut)) + NotePx;
        var size = new SheetSize(WidthPx, (int)height, 2);
        PlotFiles.SavePng(Draw, size, pngPath);
        PlotFiles.SaveSvg(Draw, size, svgPath);

        void Draw(SKCanvas canvas)
        {
            var y = MarginPx;
            for (var i = 0; i < rows.Length; i++) y = Row(canvas, rows[i].Kept, rows[i].LeftOut, y, first: i == 0);
            if (note.Length > 0) SheetText.Draw(canvas, note, MarginPx, height - NotePx / 2, TextPx - 1, PlotStyle.Top);
        }
    }

    private static float Height(IReadOnlyList<string> kept, string[] leftOut) =>
        (leftOut.Length > 0 ? LinePx * leftOut.Length + 2 * PadPx + GapPx : GapPx) + LinePx * kept.Count + 2 * PadPx;

    /// <summary>The arrow down, what leaves it to the right, and the box it ends in.</summary>
    private static float Row(SKCanvas canvas, IReadOnlyList<string> kept, string[] leftOut, float top, bool first)
    {
        const float middle = MarginPx + KeptWidthPx / 2;
        var boxTop = top + (leftOut.Length > 0 ? LinePx * leftOut.Length + 2 * PadPx + GapPx : GapPx);
        if (!first) Arrow(canvas, middle, top, middle, boxTop);
        else boxTop = top;
        if (leftOut.Length > 0)
        {
            var y = top + GapPx / 2;
            Arrow(canvas, middle, y + (LinePx * leftOut.Length + 2 * PadPx) / 2, LeftOutXPx, y + (LinePx * leftOut.Length + 2 * PadPx) / 2);
            Box(canvas, LeftOutXPx, y, LeftOutWidthPx, leftOut, PlotStyle.Faint);
        }

        Box(canvas, MarginPx, boxTop, KeptWidthPx, kept, PlotStyle.Seat);
        return boxTop + LinePx * kept.Count + 2 * PadPx;
    }

    private static void Box(SKCanvas canvas, float x, float y, float width, IReadOnlyList<string> lines, Color colour)
    {
        var rect = new SKRect(x, y, x + width, y + LinePx * lines.Count + 2 * PadPx);
        using var fill = new SKPaint { Color = new(colour.WithAlpha(.10).ARGB), IsAntialias = true };
        using var edge = new SKPaint { Color = new(colour.ARGB), IsStroke = true, StrokeWidth = 1.4f, IsAntialias = true };
        canvas.DrawRoundRect(rect, 5, 5, fill);
        canvas.DrawRoundRect(rect, 5, 5, edge);
        for (var i = 0; i < lines.Count; i++) SheetText.Draw(canvas, lines[i], x + PadPx, y + PadPx + LinePx * (i + 0.75f), TextPx, PlotStyle.Ink);
    }

    private static void Arrow(SKCanvas canvas, float x1, float y1, float x2, float y2)
    {
        const float head = 6;
        using var paint = new SKPaint { Color = new(PlotStyle.Faint.ARGB), StrokeWidth = 1.4f, IsStroke = true, IsAntialias = true };
        canvas.DrawLine(x1, y1, x2, y2, paint);
        var (dx, dy) = x2 > x1 ? (head, 0f) : (0f, head);
        canvas.DrawLine(x2, y2, x2 - dx - dy / 1.6f, y2 - dy - dx / 1.6f, paint);
        canvas.DrawLine(x2, y2, x2 - dx + dy / 1.6f, y2 - dy + dx / 1.6f, paint);
    }
}
