using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// The body points of one spell in the rider plane at an even rate: x forward, y up, mm; z, out of the plane, is not measured and 0.
/// The origin is the hip's mean position over the spell; the camera's pan is in the motion. The scale of each moment is that of the strides, straight lines between their
/// middles. A turn out of the picture plane is not put right: lengths along the plane then look shorter by its cosine.
/// </summary>
internal sealed record PlaneMotion(double RateHz, double StartSeconds, Facing Facing, IReadOnlyList<PlaneFrame> Frames)
{
    private const double MillimetresPerCentimetre = 10;

    /// <summary>A hole wider than this many frames stays one: nothing is made up across it.</summary>
    private const double WidestGapFrames = 1.5;

    /// <returns>Null where there is no scale, no side or too little to see.</returns>
    internal static PlaneMotion? Of(PointTrace trace, ExportSpell spell)
    {
        var scales = spell.Strides.Where(s => double.IsFinite(s.ScaleCmPerPx)).ToList();
        var rows = Enumerable.Range(0, trace.Seconds.Count).Where(i => trace.Seconds[i] >= spell.StartSeconds && trace.Seconds[i] <= spell.EndSeconds).ToList();
        if (scales.Count == 0 || spell.Facing == Facing.Unknown || rows.Count < 2) return null;
        var seen = rows.Where(i => double.IsFinite(trace.XPx[i][(int)BodyPoint.Hip])).ToList();
        if (seen.Count == 0) return null;

        var steps = rows.Skip(1).Zip(rows, (b, a) => trace.Seconds[b] - trace.Seconds[a]).Order().ToList();
        var step = steps[steps.Count / 2];
        var (x0, y0) = (seen.Average(i => trace.XPx[i][(int)BodyPoint.Hip]), seen.Average(i => trace.YPx[i][(int)BodyPoint.Hip]));
        var sign = spell.Facing == Facing.Right ? 1 : -1;
        var start = trace.Seconds[rows[0]];
        var count = (int)Math.Floor((trace.Seconds[rows[^1]] - start) / step + 1e-6) + 1;
        var frames = new PlaneFrame[count];
        for (var (k, at) = (0, 0); k < count; k++)
        {
            var t = start + k * step;
            while (at + 2 < rows.Count && trace.Seconds[rows[at + 1]] <= t) at++;
            var mm = ScaleAt(scales, t) * MillimetresPerCentimetre;
            frames[k] = Between(trace, rows[at], rows[at + 1], t, step, (x, y) => (sign * (x - x0) * mm, -(y - y0) * mm));
        }

        return new(1 / step, start, spell.Facing, frames);
    }

    private static PlaneFrame Between(PointTrace trace, int a, int b, double t, double step, Func<double, double, (double, double)> plane)
    {
        var gap = trace.Seconds[b] - trace.Seconds[a];
        // A frame's own time and no other: the neighbour may be a hole.
        var share = gap > 0 ? Math.Clamp((t - trace.Seconds[a]) / gap, 0, 1) : 0;
        if (share < 1e-3) share = 0;
        if (share > 1 - 1e-3) share = 1;
        var points = trace.XPx[a].Length;
        var (forward, up) = (new double[points], new double[points]);
        for (var p = 0; p < points; p++)
        {
            double Value(IReadOnlyList<double[]> of) => share == 0 ? of[a][p] : share == 1 ? of[b][p] : gap > WidestGapFrames * step ? double.NaN : of[a][p] + share * (of[b][p] - of[a][p]);
            (forward[p], up[p]) = plane(Value(trace.XPx), Value(trace.YPx));
        }

        return new(t, forward, up);
    }

    private static double ScaleAt(List<ExportStride> strides, double t)
    {
        static double Middle(ExportStride s) => (s.StartSeconds + s.EndSeconds) / 2;
        var next = strides.FindIndex(s => Middle(s) >= t);
        if (next == 0) return strides[0].ScaleCmPerPx;
        if (next < 0) return strides[^1].ScaleCmPerPx;
        var (a, b) = (strides[next - 1], strides[next]);
        return a.ScaleCmPerPx + (t - Middle(a)) / (Middle(b) - Middle(a)) * (b.ScaleCmPerPx - a.ScaleCmPerPx);
    }
}

/// <param name="ForwardMm">By <see cref="BodyPoint"/>; NaN where not known.</param>
internal sealed record PlaneFrame(double Seconds, double[] ForwardMm, double[] UpMm);
