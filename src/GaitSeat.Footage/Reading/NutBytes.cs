namespace GaitSeat.Footage;

/// <summary>Bytes of a NUT stream: its numbers, and large blocks straight into the caller's memory. Counts nothing, keeps one small buffer.</summary>
internal sealed class NutBytes(Stream source)
{
    private readonly byte[] _buffer = new byte[64 * 1024];
    private int _position;
    private int _filled;

    /// <returns>-1 at the end of the stream.</returns>
    public async ValueTask<int> TryByteAsync()
    {
        if (_position == _filled && !await FillAsync()) return -1;
        return _buffer[_position++];
    }

    public async ValueTask<byte> ByteAsync() =>
        await TryByteAsync() is >= 0 and var value ? (byte)value : throw new EndOfStreamException();

    /// <summary>NUT's "v": seven bits a byte, highest first, the top bit saying that more follow.</summary>
    public async ValueTask<long> UnsignedAsync()
    {
        long value = 0;
        while (true)
        {
            var b = await ByteAsync();
            value = checked((value << 7) | (long)(b & 0x7F));
            if ((b & 0x80) == 0) return value;
        }
    }

    /// <summary>NUT's "s": an unsigned number plus one, whose lowest bit is the sign.</summary>
    public async ValueTask<long> SignedAsync()
    {
        var value = await UnsignedAsync() + 1;
        return (value & 1) != 0 ? -(value >> 1) : value >> 1;
    }

    public async ValueTask ReadAsync(Memory<byte> destination)
    {
        var buffered = Math.Min(destination.Length, _filled - _position);
        _buffer.AsMemory(_position, buffered).CopyTo(destination);
        _position += buffered;
        await source.ReadExactlyAsync(destination[buffered..]);
    }

    public async ValueTask SkipAsync(long count)
    {
        while (count > 0)
        {
            if (_position == _filled && !await FillAsync()) throw new EndOfStreamException();
            var step = (int)Math.Min(count, _filled - _position);
            _position += step;
            count -= step;
        }
    }

    private async ValueTask<bool> FillAsync()
    {
        _position = 0;
        _filled = await source.ReadAsync(_buffer);
        return _filled > 0;
    }
}
