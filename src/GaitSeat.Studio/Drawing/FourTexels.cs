using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace GaitSeat.Studio;

/// <summary>
/// A colour read between four neighbours of a picture of four bytes a texel: red, green, blue and one of no meaning. The hot spot of drawing: two texels are
/// read at once, all channels are weighed at once, and whole numbers keep it the same on every machine.
/// </summary>
internal static class FourTexels
{
    public const int TexelBytes = 4;

    private const int FractionBits = 8;

    /// <summary>Weights are given in parts of this.</summary>
    public const int One = 1 << FractionBits;

    private const uint Half = 1u << (2 * FractionBits - 1);

    /// <summary>Fills a row of packed RGB.</summary>
    /// <param name="at">First byte of the upper left texel, for each pixel.</param>
    /// <param name="stride">Bytes of a row of texels.</param>
    /// <param name="right">Weight of the right texels.</param>
    /// <param name="down">Weight of the lower texels.</param>
    public static void BlendRow(ReadOnlySpan<byte> source, ReadOnlySpan<int> at, int stride, ReadOnlySpan<int> right, ReadOnlySpan<int> down, Span<byte> target)
    {
        for (var x = 0; 3 * x < target.Length; x++) Blend(source, at[x], stride, right[x], down[x], target, 3 * x);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Blend(ReadOnlySpan<byte> source, int at, int stride, int u, int v, Span<byte> target, int to)
    {
        var (upper, lower) = (Pair(source, at), Pair(source, at + stride));
        // At most 255 * 256: sixteen bits hold the rows' mean, and the difference wraps around to the right sum.
        var mean = (upper << FractionBits) + (lower - upper) * Vector128.Create((ushort)v);
        var (left, right) = Vector128.Widen(mean);
        var colour = (left << FractionBits) + (right - left) * (uint)u + Vector128.Create(Half);
        // The third byte of each channel is its value over One * One.
        RgbPixel.Write(target, to, Vector128.Shuffle(colour.AsByte(), Vector128.Create((byte)2, 6, 10, 14, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0)));
    }

    private static Vector128<ushort> Pair(ReadOnlySpan<byte> source, int at) =>
        Vector128.WidenLower(Vector128.CreateScalarUnsafe(BinaryPrimitives.ReadUInt64LittleEndian(source[at..])).AsByte());
}
