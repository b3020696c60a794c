using System.Buffers.Binary;

namespace GaitSeat.Vision.Import;

/// <summary>Turns stored bytes (little-endian) into numbers.</summary>
internal static class WeightDecoder
{
    public static Constant Decode(WeightFormat format, ReadOnlySpan<byte> bytes)
    {
        var values = new double[format.Count];
        var size = values.Length == 0 ? 0 : bytes.Length / values.Length;
        for (var i = 0; i < values.Length; i++)
        {
            // In double, as the weights' own runtime does it: the rounding to float comes last.
            values[i] = One(format.Stored, bytes[(i * size)..]) * format.Scale + format.Min;
        }

        return format.IsWhole
            ? new Constant(Array.ConvertAll(values, v => (int)Math.Round(v)), format.Shape)
            : new Constant(Array.ConvertAll(values, v => (float)v), format.Shape);
    }

    private static double One(StoredType type, ReadOnlySpan<byte> at) => type switch
    {
        StoredType.Float32 => BinaryPrimitives.ReadSingleLittleEndian(at),
        StoredType.Int32 => BinaryPrimitives.ReadInt32LittleEndian(at),
        StoredType.Float16 => (double)BinaryPrimitives.ReadHalfLittleEndian(at),
        StoredType.UInt16 => BinaryPrimitives.ReadUInt16LittleEndian(at),
        _ => at[0],
    };
}
