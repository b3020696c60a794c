using System.Buffers.Binary;
using System.Runtime.Intrinsics;

namespace GaitSeat.Studio;

/// <summary>A colour read between four neighbours of a packed RGB picture; the hot spot of drawing, so the three channels go at once.</summary>
internal static class FourTexels
{
    private const int FractionBits = 8;

    /// <summary>Weights are given in parts of this.</summary>
    public const int One = 1 << FractionBits;

    /// <summary>Bytes that must follow the picture: four are read for the three of the last texel.</summary>
    public const int Spare = 1;

    /// <param name="at">First byte of the upper left texel.</param>
    /// <param name="stride">Bytes of a row.</param>
    /// <param name="u">Weight of the right texels.</param>
    /// <param name="v">Weight of the lower texels.</param>
    public static void Blend(ReadOnlySpan<byte> source, int at, int stride, int u, int v, Span<byte> target, int to)
    {
        var upper = Texel(source, at) * ((One - u) * (One - v)) + Texel(source, at + 3) * (u * (One - v));
        var lower = Texel(source, at + stride) * ((One - u) * v) + Texel(source, at + stride + 3) * (u * v);
        var colour = Vector128.ShiftRightLogical(upper + lower + Vector128.Create(1 << (2 * FractionBits - 1)), 2 * FractionBits);
        (target[to + 2], target[to + 1], target[to]) = ((byte)colour[2], (byte)colour[1], (byte)colour[0]);
    }

    private static Vector128<int> Texel(ReadOnlySpan<byte> source, int at)
    {
        var four = Vector128.CreateScalarUnsafe(BinaryPrimitives.ReadUInt32LittleEndian(source[at..])).AsByte();
        return Vector128.WidenLower(Vector128.WidenLower(four)).AsInt32();
    }
}
