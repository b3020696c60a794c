using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>How a model wants its pixels.</summary>
/// <param name="Planar">Colour planes one after the other (NCHW); otherwise interleaved (NHWC).</param>
/// <param name="BlueFirst">B, G, R; otherwise R, G, B.</param>
/// <param name="Gain">Factor on the 0..255 value, by channel in the model's order.</param>
/// <param name="Offset">Added after the factor.</param>
/// <param name="Outside">0..255 value of what lies outside the picture.</param>
public sealed record InputFormat(bool Planar, bool BlueFirst, float[] Gain, float[] Offset, float Outside);

/// <summary>
/// Cuts a turned, scaled square out of a frame into a model's input tensor: bilinear, and where the picture is shrunk averaged over
/// n x n samples an input pixel so that fine texture does not alias into false edges.
/// </summary>
public static class CropSampler
{
    // Up to 1.25 times shrinking, plain bilinear sampling still touches every source pixel or nearly so.
    private const double ShrinkPerSample = 1.25;

    // 8 x 8 samples are enough for an 8K picture in a 416 px letterbox (shrunk 18 times, every second pixel seen).
    private const int MostSamples = 8;

    /// <summary>Fills <paramref name="target"/> (3 * InputPx * InputPx values) from <paramref name="frame"/>.</summary>
    public static void Fill(Frame frame, CropTransform crop, InputFormat format, Span<float> target)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(format);
        var n = crop.InputPx;
        ArgumentOutOfRangeException.ThrowIfNotEqual(target.Length, 3 * n * n);
        var samples = Math.Clamp((int)Math.Ceiling(crop.Scale / ShrinkPerSample), 1, MostSamples);
        var (sin, cos) = Math.SinCos(crop.AngleRad);
        double stepX = crop.Scale * cos / samples, stepY = crop.Scale * sin / samples;
        var picture = new Picture(frame.Rgb, frame.WidthPx, frame.HeightPx, format.Outside);
        var writer = new Writer(target, format, n, 1f / (samples * samples));
        for (var row = 0; row < n; row++)
        {
            for (var column = 0; column < n; column++)
            {
                var sum = default(Rgb);
                for (var sub = 0; sub < samples; sub++)
                {
                    var start = crop.ToPictureFast(column + 0.5 / samples, row + (sub + 0.5) / samples, sin, cos);
                    for (var k = 0; k < samples; k++) picture.Add(start.X + k * stepX, start.Y + k * stepY, ref sum);
                }

                writer.Put(row * n + column, sum);
            }
        }
    }

    private static PointPx ToPictureFast(this in CropTransform crop, double u, double v, double sin, double cos)
    {
        double a = (u - crop.InputPx / 2.0) * crop.Scale, b = (v - crop.InputPx / 2.0) * crop.Scale;
        return new(crop.CentreX + a * cos - b * sin, crop.CentreY + a * sin + b * cos);
    }

    private struct Rgb
    {
        public float R, G, B;
    }

    private readonly ref struct Picture(ReadOnlySpan<byte> rgb, int width, int height, float outside)
    {
        private readonly ReadOnlySpan<byte> _rgb = rgb;

        public void Add(double x, double y, ref Rgb sum)
        {
            double sx = x - 0.5, sy = y - 0.5;
            int x0 = (int)Math.Floor(sx), y0 = (int)Math.Floor(sy);
            float fx = (float)(sx - x0), fy = (float)(sy - y0);
            if ((uint)x0 < (uint)(width - 1) && (uint)y0 < (uint)(height - 1))
            {
                var top = _rgb.Slice((y0 * width + x0) * 3, 6);
                var low = _rgb.Slice(((y0 + 1) * width + x0) * 3, 6);
                float w11 = fx * fy, w10 = fx - w11, w01 = fy - w11, w00 = 1 - fx - w01;
                sum.R += w00 * top[0] + w10 * top[3] + w01 * low[0] + w11 * low[3];
                sum.G += w00 * top[1] + w10 * top[4] + w01 * low[1] + w11 * low[4];
                sum.B += w00 * top[2] + w10 * top[5] + w01 * low[2] + w11 * low[5];
                return;
            }

            AddAtEdge(x0, y0, (1 - fx) * (1 - fy), ref sum);
            AddAtEdge(x0 + 1, y0, fx * (1 - fy), ref sum);
            AddAtEdge(x0, y0 + 1, (1 - fx) * fy, ref sum);
            AddAtEdge(x0 + 1, y0 + 1, fx * fy, ref sum);
        }

        private void AddAtEdge(int x, int y, float weight, ref Rgb sum)
        {
            var inside = (uint)x < (uint)width && (uint)y < (uint)height;
            var at = inside ? (y * width + x) * 3 : 0;
            sum.R += weight * (inside ? _rgb[at] : outside);
            sum.G += weight * (inside ? _rgb[at + 1] : outside);
            sum.B += weight * (inside ? _rgb[at + 2] : outside);
        }
    }

    private readonly ref struct Writer(Span<float> target, InputFormat format, int side, float share)
    {
        private readonly Span<float> _target = target;
        private readonly int _pixelStep = format.Planar ? 1 : 3;
        private readonly int _channelStep = format.Planar ? side * side : 1;

        public void Put(int pixel, in Rgb sum)
        {
            var at = pixel * _pixelStep;
            _target[at] = (format.BlueFirst ? sum.B : sum.R) * share * format.Gain[0] + format.Offset[0];
            _target[at + _channelStep] = sum.G * share * format.Gain[1] + format.Offset[1];
            _target[at + 2 * _channelStep] = (format.BlueFirst ? sum.R : sum.B) * share * format.Gain[2] + format.Offset[2];
        }
    }
}
