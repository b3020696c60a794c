using System.Buffers.Binary;

namespace GaitSeat.Footage;

/// <summary>Bytes under construction, with NUT's numbers, packets and checksums.</summary>
internal sealed class NutBlock
{
    private const uint Polynomial = 0x04C1_1DB7;
    private readonly List<byte> _bytes = [];

    public ReadOnlyMemory<byte> Written => _bytes.ToArray();

    public NutBlock Byte(byte value)
    {
        _bytes.Add(value);
        return this;
    }

    public NutBlock Bytes(ReadOnlySpan<byte> values)
    {
        _bytes.AddRange(values);
        return this;
    }

    /// <summary>NUT's "v", see <see cref="NutBytes.UnsignedAsync"/>.</summary>
    public NutBlock Unsigned(long value)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(value);
        var groups = 1;
        while (value >> (7 * groups) > 0 && groups < 9) groups++;
        for (var i = groups - 1; i > 0; i--) Byte((byte)(0x80 | (value >> (7 * i))));
        return Byte((byte)(value & 0x7F));
    }

    /// <summary>NUT's "s", see <see cref="NutBytes.SignedAsync"/>.</summary>
    public NutBlock Signed(long value) => Unsigned(value > 0 ? 2 * value - 1 : -2 * value);

    /// <summary>A start code, the length of what follows, the body and its checksum.</summary>
    public void Packet(ulong start, Action<NutBlock> fill)
    {
        var body = new NutBlock();
        fill(body);
        var checkedBody = body.WithChecksum();
        Span<byte> startBytes = stackalloc byte[8];
        BinaryPrimitives.WriteUInt64BigEndian(startBytes, start);
        Bytes(startBytes).Unsigned(checkedBody.Length).Bytes(checkedBody);
    }

    /// <summary>The bytes and their CRC-32 (polynomial 0x04C11DB7, highest bit first, start 0).</summary>
    public byte[] WithChecksum()
    {
        uint crc = 0;
        foreach (var b in _bytes)
        {
            crc ^= (uint)b << 24;
            for (var bit = 0; bit < 8; bit++) crc = (crc & 0x8000_0000) != 0 ? (crc << 1) ^ Polynomial : crc << 1;
        }

        var checksum = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(checksum, crc);
        return [.. _bytes, .. checksum];
    }
}
