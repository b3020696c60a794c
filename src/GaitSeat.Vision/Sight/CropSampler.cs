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
        if (frame.Colours is { } colours) Fill(new PlanesSource(frame, colours, format.Outside), crop, samples, format, target);
        else Fill(new RgbSource(frame, format.Outside), crop, samples, format, target);
    }

    private static void Fill<T>(in T picture, CropTransform crop, int samples, InputFormat format, Span<float> target)
        where T : struct, ICropSource, allows ref struct
    {
        Span<Vector128<float>> row = stackalloc Vector128<float>[crop.InputPx];
        var share = Vector128.Create(1f / (samples * samples));
        for (var y = 0; y < row.Length; y++)
        {
            row.Clear();
            for (var sub = 0; sub < samples; sub++) AddLine(picture, crop, y + (sub + 0.5) / samples, samples, row);
            for (var x = 0; x < row.Length; x++) row[x] = picture.ToRgb(row[x] * share);
            Write(row, y, format, target);
        }
    }

    /// <summary>Adds to each input pixel of a row its samples along one line, <paramref name="samples"/> a pixel.</summary>
    /// <param name="v">Height of the line in the input, px.</param>
    private static void AddLine<T>(in T picture, in CropTransform crop, double v, int samples, Span<Vector128<float>> sums)
        where T : struct, ICropSource, allows ref struct
    {
        var start = crop.ToPicture(0.5 / samples, v);
        var (sin, cos) = Math.SinCos(crop.AngleRad);
        long stepX = FixedPoint.Of(crop.Across * cos / samples), stepY = FixedPoint.Of(crop.Across * sin / samples);
        // Pixel centres lie at halves: in this count pixel k stands at k.
        long x = FixedPoint.Of(start.X - 0.5), y = FixedPoint.Of(start.Y - 0.5);
        for (var column = 0; column < sums.Length; column++)
        {
            var sum = Vector128<float>.Zero;
            for (var k = 0; k < samples; k++)
            {
                sum += picture.At(x, y);
                x += stepX;
                y += stepY;
            }

            sums[column] += sum;
        }
    }

    private static void Write(ReadOnlySpan<Vector128<float>> row, int y, InputFormat format, Span<float> target)
    {
        int n = row.Length, pixelStep = format.Planar ? 1 : 3, channelStep = format.Planar ? n * n : 1;
        int first = format.BlueFirst ? 2 : 0, last = 2 - first;
        float g0 = format.Gain[0], g1 = format.Gain[1], g2 = format.Gain[2];
        float o0 = format.Offset[0], o1 = format.Offset[1], o2 = format.Offset[2];
        for (int column = 0, at = y * n * pixelStep; column < n; column++, at += pixelStep)
        {
            target[at] = row[column][first] * g0 + o0;
            target[at + channelStep] = row[column][1] * g1 + o1;
            target[at + 2 * channelStep] = row[column][last] * g2 + o2;
        }
    }
}
