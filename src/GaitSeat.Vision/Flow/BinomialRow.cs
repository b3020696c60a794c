using System.Numerics;
using System.Runtime.InteropServices;

namespace GaitSeat.Vision.Flow;

/// <summary>The two passes of the 1 3 3 1 kernel that halves a picture.</summary>
internal static class BinomialRow
{
    private const float Outer = 1 / 8f;
    private const float Inner = 3 / 8f;

    /// <summary>Four rows blended into one, all of one length.</summary>
    public static void Blend(ReadOnlySpan<float> above, ReadOnlySpan<float> upper, ReadOnlySpan<float> lower, ReadOnlySpan<float> below, Span<float> blended)
    {
        var vectors = MemoryMarshal.Cast<float, Vector<float>>(blended);
        var a = MemoryMarshal.Cast<float, Vector<float>>(above);
        var u = MemoryMarshal.Cast<float, Vector<float>>(upper);
        var l = MemoryMarshal.Cast<float, Vector<float>>(lower);
        var b = MemoryMarshal.Cast<float, Vector<float>>(below);
        for (var i = 0; i < vectors.Length; i++) vectors[i] = ((a[i] + b[i]) * Outer) + ((u[i] + l[i]) * Inner);
        for (var x = vectors.Length * Vector<float>.Count; x < blended.Length; x++)
        {
            blended[x] = ((above[x] + below[x]) * Outer) + ((upper[x] + lower[x]) * Inner);
        }
    }

    /// <summary>Every second place of a row, blurred; the row's ends are repeated outwards.</summary>
    public static void Halve(ReadOnlySpan<float> row, Span<float> half)
    {
        half[0] = (row[0] * (Outer + Inner)) + (row[1] * Inner) + (row[Math.Min(2, row.Length - 1)] * Outer);
        var last = half.Length - 1;
        for (var x = 1; x < last; x++)
        {
            var from = row.Slice((2 * x) - 1, 4);
            half[x] = ((from[0] + from[3]) * Outer) + ((from[1] + from[2]) * Inner);
        }

        var end = 2 * last;
        half[last] = (row[Math.Max(end - 1, 0)] * Outer) + (row[end] * Inner) + (row[end + 1] * Inner) + (row[Math.Min(end + 2, row.Length - 1)] * Outer);
    }
}
