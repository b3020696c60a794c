using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>The strip along the bottom: a line of figures over the seat motion with stride cuts, tops and the playhead.</summary>
internal sealed class StripLayer : IDisposable
{
    private const float MarginPx = 18, TextPx = 19, TextLinePx = 31, CurveBottomPx = 10;
    private const float CurveWidth = 2.2f, CutWidth = 1.4f, TopRadius = 3.2f, PlayheadWidth = 2, PlayheadRadius = 5;
    private readonly Pens _pens = new();
    private MotionTrace? _rangeOf;
    private (double Low, double High) _range;

    public void Draw(SKCanvas canvas, PaintView view)
    {
        var top = (float)view.StripTop;
        canvas.DrawRect(0, top, view.WidthPx, view.HeightPx - top, _pens.Fill(Palette.Panel));
        DrawWords(canvas, view, top);
        var times = view.Scene.Trace.TimeSeconds;
        if (times.Length == 0) return;
        if (!ReferenceEquals(_rangeOf, view.Scene.Trace)) (_rangeOf, _range) = (view.Scene.Trace, SeatRange(view.Scene.Trace));
        var scale = view.Scale;
        var plot = new StripPlot(
            new SKRect(MarginPx * scale, top + TextLinePx * scale, view.WidthPx - MarginPx * scale, view.HeightPx - CurveBottomPx * scale),
            StripPlot.Window(view.Scene.TimeSeconds, times[0], times[^1], view.Settings.StripSeconds), _range);
        DrawCuts(canvas, view, plot);
        DrawCurve(canvas, view, plot);
        DrawPlayhead(canvas, view, plot);
    }

    private void DrawWords(SKCanvas canvas, PaintView view, float top)
    {
        var scale = view.Scale;
        var baseline = top + TextLinePx * scale * 0.5f + TextPx * scale * Pens.CapHalf;
        var x = MarginPx * scale;
        foreach (var (text, strong) in StripWords.Of(view))
        {
            var font = _pens.Font(TextPx * scale, strong);
            canvas.DrawText(text, x, baseline, SKTextAlign.Left, font, _pens.Fill(strong ? Palette.Paper : Palette.Muted));
            x += font.MeasureText(text) + TextPx * scale * 0.4f;
        }
    }

    private void DrawCuts(SKCanvas canvas, PaintView view, StripPlot plot)
    {
        var cut = _pens.Line(Palette.Seat.WithAlpha(0xA0), CutWidth * view.Scale);
        foreach (var at in view.Scene.Strides.SelectMany(s => new[] { s.StartSeconds, s.EndSeconds }).Distinct())
        {
            if (plot.Shows(at)) canvas.DrawLine(plot.X(at), plot.Area.Top, plot.X(at), plot.Area.Bottom, cut);
        }
    }

    private void DrawCurve(SKCanvas canvas, PaintView view, StripPlot plot)
    {
        var (times, seat) = (view.Scene.Trace.TimeSeconds, view.Scene.Trace.SeatPctLeg);
        DrawStretch(canvas, plot, times, seat, plot.Time.Start, view.Scene.TimeSeconds, _pens.Line(Palette.Paper, CurveWidth * view.Scale));
        DrawStretch(canvas, plot, times, seat, view.Scene.TimeSeconds, plot.Time.End, _pens.Line(Palette.Muted, CurveWidth * view.Scale));
        foreach (var stride in view.Scene.Strides)
        {
            if (plot.Shows(stride.TopSeconds) && TraceValue.At(times, seat, stride.TopSeconds) is var y && !double.IsNaN(y))
                canvas.DrawCircle(plot.X(stride.TopSeconds), plot.Y(y), TopRadius * view.Scale, _pens.Fill(Palette.Plumb));
        }
    }

    /// <summary>The curve between two times, broken where it is unknown. One path a stretch: lines drawn one by one would show their joints where they are see-through.</summary>
    private static void DrawStretch(SKCanvas canvas, StripPlot plot, double[] times, double[] seat, double from, double to, SKPaint pen)
    {
        using var path = new SKPathBuilder();
        var open = false;
        for (var i = StripPlot.FirstAt(times, from); i < times.Length && times[i] <= to; i++)
        {
            var known = !double.IsNaN(seat[i]);
            var at = known ? new SKPoint(plot.X(times[i]), plot.Y(seat[i])) : default;
            if (known && open) path.LineTo(at);
            else if (known) path.MoveTo(at);
            open = known;
        }

        using var curve = path.Detach();
        canvas.DrawPath(curve, pen);
    }

    private void DrawPlayhead(SKCanvas canvas, PaintView view, StripPlot plot)
    {
        if (!plot.Shows(view.Scene.TimeSeconds)) return;
        var x = plot.X(view.Scene.TimeSeconds);
        canvas.DrawLine(x, plot.Area.Top, x, plot.Area.Bottom, _pens.Line(Palette.Paper, PlayheadWidth * view.Scale));
        var seat = view.Scene.TraceIndex < 0 ? double.NaN : view.Scene.Trace.SeatPctLeg[view.Scene.TraceIndex];
        if (!double.IsNaN(seat)) canvas.DrawCircle(x, plot.Y(seat), PlayheadRadius * view.Scale, _pens.Fill(Palette.Paper));
    }

    /// <summary>Least and greatest seat height of the clip, so that the curve keeps its scale while it scrolls.</summary>
    private static (double Low, double High) SeatRange(MotionTrace trace)
    {
        var known = trace.SeatPctLeg.Where(double.IsFinite).ToArray();
        return known.Length == 0 ? (0, 1) : (known.Min(), Math.Max(known.Max(), known.Min() + LeastRangePctLeg));
    }

    /// <summary>Smaller ranges are not blown up to the height of the strip: a seat that stays in the saddle shall look so.</summary>
    private const double LeastRangePctLeg = 4;

    public void Dispose() => _pens.Dispose();
}
