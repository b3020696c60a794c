using System.Buffers;
using System.Buffers.Binary;
using System.Text;

namespace GaitSeat.Vision.Import;

/// <summary>Writes one protobuf message: the few wire types that <c>onnx.proto</c> needs (protobuf encoding guide: tag = field * 8 + wire type).</summary>
internal sealed class ProtoWriter
{
    private const int LengthDelimited = 2;
    private const int Fixed32 = 5;
    private readonly ArrayBufferWriter<byte> _bytes = new();

    public ReadOnlySpan<byte> Written => _bytes.WrittenSpan;

    public ProtoWriter Int(int field, long value)
    {
        Varint((ulong)field << 3);
        Varint((ulong)value);
        return this;
    }

    public ProtoWriter Float(int field, float value)
    {
        Varint(((ulong)field << 3) | Fixed32);
        BinaryPrimitives.WriteSingleLittleEndian(_bytes.GetSpan(sizeof(float)), value);
        _bytes.Advance(sizeof(float));
        return this;
    }

    public ProtoWriter Bytes(int field, ReadOnlySpan<byte> value)
    {
        Varint(((ulong)field << 3) | LengthDelimited);
        Varint((ulong)value.Length);
        _bytes.Write(value);
        return this;
    }

    public ProtoWriter Text(int field, string value) => Bytes(field, Encoding.UTF8.GetBytes(value));

    public ProtoWriter Message(int field, ProtoWriter value) => Bytes(field, value.Written);

    private void Varint(ulong value)
    {
        const byte more = 0x80;
        for (; value >= more; value >>= 7) Byte((byte)(value | more));
        Byte((byte)value);
    }

    private void Byte(byte value)
    {
        _bytes.GetSpan(1)[0] = value;
        _bytes.Advance(1);
    }
}
