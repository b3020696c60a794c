using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.Intrinsics;

namespace GaitSeat.Studio;

/// <summary>A pixel of a packed RGB picture, its three channels read or written in one go.</summary>
internal static class RgbPixel
{
    /// <summary>Red, green, blue, each 0..255, and 0.</summary>
    /// <param name="at">First of the pixel's three bytes.</param>
    public static Vector4 Read(ReadOnlySpan<byte> rgb, int at)
    {
        var packed = Vector128.CreateScalarUnsafe((uint)(BinaryPrimitives.ReadUInt16LittleEndian(rgb[at..]) | (rgb[at + 2] << 16))).AsByte();
        return Vector128.ConvertToSingle(Vector128.WidenLower(Vector128.WidenLower(packed)).AsInt32()).AsVector4();
    }

    /// <param name="colour">Red, green, blue, each 0..255; what follows the point is dropped.</param>
    public static void Write(Span<byte> rgb, int at, Vector4 colour) =>
        Write(rgb, at, Vector128.Shuffle(Vector128.ConvertToInt32Native(colour.AsVector128()).AsByte(), Vector128.Create((byte)0, 4, 8, 12, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0)));

    /// <param name="colour">Red, green and blue as its first three bytes.</param>
    public static void Write(Span<byte> rgb, int at, Vector128<byte> colour)
    {
        var packed = colour.AsUInt32().ToScalar();
        BinaryPrimitives.WriteUInt16LittleEndian(rgb[at..], (ushort)packed);
        rgb[at + 2] = (byte)(packed >> 16);
    }
}
