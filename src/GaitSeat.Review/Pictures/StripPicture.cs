using GaitSeat.Model;
using GaitSeat.Review.Questions;

namespace GaitSeat.Review.Pictures;

/// <summary>
/// The strip of strides under the clip: seat motion with sits and tops, thigh angle and stirrup drift of each stride, and the measure the fault is told by, one over the
/// other on one time axis. Bars are 95 % intervals of the stride. The ends of the axis stand in <c>data-</c> attributes, so that the page can turn a click into a time.
/// The strip is as high for two measures as for three: what stands below does not move.
/// </summary>
internal static class StripPicture
{
    private const int Left = 46, Right = 10, Caption = 16, SeatHeight = 54, StridesHeight = 186, Axis = 20;

    /// <summary>Narrower strips have short captions.</summary>
    private const int WideEnoughPx = 560;

    private const double LeastSpanShare = 0.02;

    /// <param name="trace">Signals of the clip; null where the run kept none.</param>
    /// <param name="threshold">The limit the measure is held against; null where there is none.</param>
    internal static string Draw(Question question, MotionTrace? trace, MeasureDefinition measure, double? threshold, int widthPx)
    {
        var spell = question.Spell.Spell;
        var (start, end) = (spell.StartSeconds, Math.Max(spell.EndSeconds, spell.StartSeconds + 0.1));
        double X(double seconds) => Left + (seconds - start) / (end - start) * (widthPx - Left - Right);
        var thigh = MeasureCatalogue.Get(StrideMeasure.ThighAngleSit);
        MeasureDefinition[] panels = [.. new[] { thigh, DriftOf(question.Spell.Strides), measure }.DistinctBy(m => m.Measure)];
        const int height = Caption + SeatHeight + StridesHeight + Axis;
        var panelHeight = StridesHeight / panels.Length;
        var svg = new SvgText();
        svg.Add($"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"strip\" width=\"{widthPx}\" height=\"{height}\" viewBox=\"0 0 {widthPx} {height}\" data-start=\"{start:0.####}\" data-end=\"{end:0.####}\" data-left=\"{Left}\" data-right=\"{widthPx - Right}\">");
        svg.Box("strip-flag", X(Math.Max(start, question.StartSeconds)), 0, X(Math.Min(end, question.EndSeconds)) - X(Math.Max(start, question.StartSeconds)), height - Axis);
        foreach (var stride in question.Spell.Strides)
        {
            svg.Line("strip-sit", X(stride.StartSeconds), Caption, X(stride.StartSeconds), height - Axis);
            svg.Line("strip-sit", X(stride.EndSeconds), Caption, X(stride.EndSeconds), height - Axis);
        }

        DrawSeat(svg, question, trace, X, start, end, widthPx);
        var top = Caption + SeatHeight;
        foreach (var drawn in panels)
        {
            DrawStrides(svg, question, drawn, drawn.Measure == measure.Measure ? threshold : null, X, (top, panelHeight), widthPx);
            top += panelHeight;
        }

        var axis = new ValueScale(start, end, 0, 1);
        foreach (var second in axis.Ticks()) svg.Words("strip-tick", X(second), height - 6, FormattableString.Invariant($"{second:0.##} s"), "middle");
        return svg.Add($"</svg>").ToString();
    }

    /// <summary>The swing in centimetres where the spell has a scale, else in percent of leg length.</summary>
    private static MeasureDefinition DriftOf(IReadOnlyList<Stride> strides) => MeasureCatalogue.Get(
        strides.Any(s => !s.Measures[StrideMeasure.StirrupDriftSwingCm].IsMissing) ? StrideMeasure.StirrupDriftSwingCm : StrideMeasure.StirrupDriftSwingPctLeg);

    private static void DrawSeat(SvgText svg, Question question, MotionTrace? trace, Func<double, double> x, double start, double end, int widthPx)
    {
        svg.Words("strip-caption", 4, Caption - 4, trace is null ? "Seat motion: the run kept no tracks (output.tracks)" : widthPx < WideEnoughPx ? "Seat motion, % of leg" : "Seat motion, % of leg; lines are the sits, rings the tops");
        if (trace is null) return;
        int[] frames = [.. Enumerable.Range(0, trace.TimeSeconds.Length).Where(i => trace.TimeSeconds[i] >= start && trace.TimeSeconds[i] <= end)];
        var scale = ValueScale.Over(frames.Select(i => trace.SeatPctLeg[i]), Caption, Caption + SeatHeight, 4);
        DrawTicks(svg, scale, widthPx);
        svg.Path("strip-seat", frames.Select(i => (x(trace.TimeSeconds[i]), scale.At(trace.SeatPctLeg[i]))));
        foreach (var top in question.Spell.Strides.Select(s => s.TopSeconds).Where(double.IsFinite))
        {
            var at = frames.Length == 0 ? -1 : frames.MinBy(i => Math.Abs(trace.TimeSeconds[i] - top));
            if (at >= 0 && double.IsFinite(trace.SeatPctLeg[at])) svg.Dot("strip-top", x(top), scale.At(trace.SeatPctLeg[at]), 3.5);
        }
    }

    private static void DrawStrides(SvgText svg, Question question, MeasureDefinition measure, double? threshold, Func<double, double> x, (int Top, int Height) panel, int widthPx)
    {
        var top = panel.Top;
        var values = question.Spell.Strides.Select(s => (Stride: s, Value: s.Measures[measure.Measure])).Where(s => double.IsFinite(s.Value.Value)).ToArray();
        svg.Words("strip-caption", 4, top + Caption - 4, values.Length == 0 ? $"{Labels.Of(measure)}: not measured in this spell" : $"{Labels.Of(measure)}, {Labels.Unit(measure)}{(widthPx < WideEnoughPx ? "" : ", each stride with its 95 % interval")}{(threshold is null ? "" : "; dashed: limit")}");
        if (values.Length == 0) return;
        var (from, to) = (top + Caption, top + panel.Height - 4);
        var all = values.SelectMany(v => new[] { v.Value.Value - Half(v.Value), v.Value.Value + Half(v.Value) }).Concat(threshold is { } t ? [t] : []);
        var scale = ValueScale.Over(all, from, to, Math.Max(1e-3, Math.Abs(values[0].Value.Value) * LeastSpanShare));
        DrawTicks(svg, scale, widthPx);
        if (threshold is { } limit) svg.Line("strip-limit", Left, scale.At(limit), widthPx - Right, scale.At(limit));
        foreach (var (stride, value) in values)
        {
            var middle = (x(stride.StartSeconds) + x(stride.EndSeconds)) / 2;
            if (Half(value) > 0) svg.Line("strip-interval", middle, scale.At(value.Value - Half(value)), middle, scale.At(value.Value + Half(value)));
            svg.Dot(stride.IsTrusted ? "strip-value" : "strip-untrusted", middle, scale.At(value.Value), 4);
        }
    }

    private static void DrawTicks(SvgText svg, ValueScale scale, int widthPx)
    {
        foreach (var tick in scale.Ticks())
        {
            svg.Line("strip-grid", Left, scale.At(tick), widthPx - Right, scale.At(tick));
            svg.Words("strip-tick", Left - 6, scale.At(tick) + 4, FormattableString.Invariant($"{tick:0.##}"), "end");
        }
    }

    private static double Half(Measured value) => double.IsFinite(value.HalfWidth95) ? value.HalfWidth95 : 0;
}
