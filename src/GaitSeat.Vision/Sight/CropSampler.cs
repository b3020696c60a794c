using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
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
    // Up to 1.6 times shrinking plain bilinear sampling leaves out few source pixels, and the models were trained on pictures shrunk like that;
    // with four samples a pixel at 1.3 times the points were no better (rendered and drawn clips) and the crop took four times as long.
    private const double ShrinkPerSample = 1.6;

    // 8 x 8 samples are enough for an 8K picture in a 416 px letterbox (shrunk 18 times, about every second pixel seen).
    private const int MostSamples = 8;

    // The row of sums lives on the stack: 16 bytes a pixel.
    private const int WidestInputPx = 2048;

    /// <summary>Fills <paramref name="target"/> (3 * InputPx * InputPx values) from <paramref name="frame"/>.</summary>
    public static void Fill(Frame frame, CropTransform crop, InputFormat format, Span<float> target)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(format);
        var n = crop.InputPx;
        ArgumentOutOfRangeException.ThrowIfGreaterThan(n, WidestInputPx);
        ArgumentOutOfRangeException.ThrowIfNotEqual(target.Length, 3 * n * n);
        var samples = Math.Clamp((int)Math.Ceiling(crop.Scale / ShrinkPerSample), 1, MostSamples);
        var picture = new Picture(frame.Rgb, frame.WidthPx, frame.HeightPx, format.Outside);
        Span<Vector128<float>> sums = stackalloc Vector128<float>[n];
        for (var row = 0; row < n; row++)
        {
            sums.Clear();
            for (var sub = 0; sub < samples; sub++) picture.AddLine(crop, row + (sub + 0.5) / samples, samples, sums);
            Write(sums, row, 1f / (samples * samples), format, target);
        }
    }

    private static void Write(ReadOnlySpan<Vector128<float>> sums, int row, float share, InputFormat format, Span<float> target)
    {
        int n = sums.Length, pixelStep = format.Planar ? 1 : 3, channelStep = format.Planar ? n * n : 1;
        int first = format.BlueFirst ? 2 : 0, last = 2 - first;
        float g0 = format.Gain[0] * share, g1 = format.Gain[1] * share, g2 = format.Gain[2] * share;
        float o0 = format.Offset[0], o1 = format.Offset[1], o2 = format.Offset[2];
        for (int column = 0, at = row * n * pixelStep; column < n; column++, at += pixelStep)
        {
            target[at] = sums[column][first] * g0 + o0;
            target[at + channelStep] = sums[column][1] * g1 + o1;
            target[at + 2 * channelStep] = sums[column][last] * g2 + o2;
        }
    }

    // Channels lie in lanes 0, 1, 2; lane 3 carries a neighbour's byte and is never read.
    private readonly ref struct Picture(ReadOnlySpan<byte> rgb, int width, int height, float outside)
    {
        private readonly ReadOnlySpan<byte> _rgb = rgb;
        private readonly Vector128<float> _outside = Vector128.Create(outside);

        /// <summary>Adds to each input pixel of a row its samples along one line, <paramref name="samples"/> a pixel.</summary>
        /// <param name="v">Height of the line in the input, px.</param>
        public void AddLine(in CropTransform crop, double v, int samples, Span<Vector128<float>> sums)
        {
            var start = crop.ToPicture(0.5 / samples, v);
            var (sin, cos) = Math.SinCos(crop.AngleRad);
            // 32.32 fixed point: no rounding instruction in the inner loop, and 4096 steps of 2^-33 px error stay far below a thousandth.
            long stepX = Fixed(crop.Across * cos / samples), stepY = Fixed(crop.Across * sin / samples);
            // Pixel centres lie at halves: in this count pixel k stands at k.
            long x = Fixed(start.X - 0.5), y = Fixed(start.Y - 0.5);
            for (var column = 0; column < sums.Length; column++)
            {
                var sum = Vector128<float>.Zero;
                for (var k = 0; k < samples; k++)
                {
                    sum += At(x, y);
                    x += stepX;
                    y += stepY;
                }

                sums[column] += sum;
            }
        }

        private static long Fixed(double px) => (long)Math.Round(px * (1L << 32));

        private static float Fraction(long x) => (int)((uint)x >> 8) * (1f / (1 << 24));

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private Vector128<float> At(long x, long y)
        {
            int x0 = (int)(x >> 32), y0 = (int)(y >> 32);
            // The last two rows go the slow way: an eight-byte read of two pixels would pass the end.
            if ((uint)x0 >= (uint)(width - 1) || (uint)y0 >= (uint)(height - 2)) return AtEdge(x0, y0, Fraction(x), Fraction(y));
            Vector128<float> fx = Vector128.Create(Fraction(x)), fy = Vector128.Create(Fraction(y));
            ref var pixel = ref Unsafe.Add(ref MemoryMarshal.GetReference(_rgb), (y0 * width + x0) * 3);
            var high = Mix(Unsafe.ReadUnaligned<ulong>(ref pixel), fx);
            return high + (Mix(Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref pixel, 3 * width)), fx) - high) * fy;
        }

        // Two neighbours, R G B R G B from the low byte up.
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static Vector128<float> Mix(ulong pair, Vector128<float> share)
        {
            Vector128<float> a = Widen((uint)pair), b = Widen((uint)(pair >> 24));
            return a + (b - a) * share;
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static Vector128<float> Widen(uint bytes) =>
            Vector128.ConvertToSingle(Vector128.WidenLower(Vector128.WidenLower(Vector128.CreateScalarUnsafe(bytes).AsByte())).AsInt32());

        private Vector128<float> AtEdge(int x0, int y0, float fx, float fy)
        {
            if (x0 < -1 || y0 < -1 || x0 >= width || y0 >= height) return _outside;
            return Single(x0, y0) * ((1 - fx) * (1 - fy)) + Single(x0 + 1, y0) * (fx * (1 - fy))
                + Single(x0, y0 + 1) * ((1 - fx) * fy) + Single(x0 + 1, y0 + 1) * (fx * fy);
        }

        private Vector128<float> Single(int x, int y)
        {
            if ((uint)x >= (uint)width || (uint)y >= (uint)height) return _outside;
            var at = (y * width + x) * 3;
            return Vector128.Create(_rgb[at], _rgb[at + 1], _rgb[at + 2], 0f);
        }
    }
}
