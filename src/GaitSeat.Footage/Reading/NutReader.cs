using System.Buffers.Binary;

namespace GaitSeat.Footage;

/// <summary>
/// Reads the frames of a one-stream NUT stream as FFmpeg writes it (NUT Open Container Format, version 3). NUT is the one container FFmpeg
/// offers that carries raw pictures of any size with times in the stream's own clock, so that a picture and its exact time
/// arrive together and cannot be paired wrongly.
/// </summary>
internal sealed class NutReader(Stream source)
{
    private const int FileMarkLength = 25;
    private const ulong MainStart = 0x4E4D_7A56_1F5F_04AD;
    private const ulong StreamStart = 0x4E53_1140_5BF2_F9DB;
    private const ulong SyncStart = 0x4E4B_E4AD_EECA_4569;
    private const long LongPacket = 4096;
    private const int ChecksumLength = 4;
    private readonly NutBytes _bytes = new(source);
    private NutMainHeader? _main;
    private (long Numerator, long Denominator) _timeBase;
    private int _timeBits;
    private long _lastTicks;

    /// <summary>Moves to the next frame; its pixels are then to be taken with <see cref="ReadPixelsAsync"/>.</summary>
    /// <returns>Its time, s, and its size in bytes; null at the end.</returns>
    /// <exception cref="EndOfStreamException">The stream ends within a frame.</exception>
    public async Task<(double Seconds, long Bytes)?> NextAsync()
    {
        if (_main is null)
        {
            if (await _bytes.TryByteAsync() < 0) return null;
            await _bytes.SkipAsync(FileMarkLength - 1);
        }

        while (await _bytes.TryByteAsync() is >= 0 and var code)
        {
            if (code == 'N') await ReadPacketAsync();
            else return await ReadFrameHeaderAsync(code);
        }

        return null;
    }

    public ValueTask ReadPixelsAsync(Memory<byte> destination) => _bytes.ReadAsync(destination);

    private async Task ReadPacketAsync()
    {
        var rest = new byte[8];
        rest[0] = (byte)'N';
        await _bytes.ReadAsync(rest.AsMemory(1));
        var start = BinaryPrimitives.ReadUInt64BigEndian(rest);
        var length = await _bytes.UnsignedAsync();
        if (length > LongPacket) await _bytes.SkipAsync(ChecksumLength);
        var body = new byte[length];
        await _bytes.ReadAsync(body);
        var content = new NutBytes(new MemoryStream(body, 0, Math.Max(0, body.Length - ChecksumLength)));
        if (start == MainStart) _main = await NutMainHeader.ReadAsync(content);
        else if (start == StreamStart) await ReadStreamHeaderAsync(content);
        else if (start == SyncStart) await ReadSyncPointAsync(content);
    }

    private async Task ReadStreamHeaderAsync(NutBytes content)
    {
        await content.UnsignedAsync(); // stream number
        await content.UnsignedAsync(); // class: video
        await content.SkipAsync(await content.UnsignedAsync()); // four-character code
        _timeBase = Main.TimeBases[await content.UnsignedAsync()];
        _timeBits = (int)await content.UnsignedAsync();
    }

    /// <summary>A sync point states a time in any of the time bases; frame times count on from it.</summary>
    private async Task ReadSyncPointAsync(NutBytes content)
    {
        var coded = await content.UnsignedAsync();
        var (numerator, denominator) = Main.TimeBases[coded % Main.TimeBases.Length];
        var ticks = (Int128)(coded / Main.TimeBases.Length) * numerator * _timeBase.Denominator / ((Int128)denominator * _timeBase.Numerator);
        _lastTicks = (long)ticks;
    }

    private async Task<(double Seconds, long Bytes)> ReadFrameHeaderAsync(int code)
    {
        var row = Main.Codes[code];
        var flags = row.Flags;
        if (flags.HasFlag(NutFlags.Invalid)) throw new InvalidDataException($"FFmpeg's NUT stream has an invalid frame code {code}.");
        if (flags.HasFlag(NutFlags.Coded)) flags ^= (NutFlags)await _bytes.UnsignedAsync();
        if (flags.HasFlag(NutFlags.StreamId)) await _bytes.UnsignedAsync();
        _lastTicks = flags.HasFlag(NutFlags.CodedTime) ? FullTime(await _bytes.UnsignedAsync()) : _lastTicks + row.TimeDelta;
        var high = flags.HasFlag(NutFlags.SizeMsb) ? await _bytes.UnsignedAsync() : 0;
        if (flags.HasFlag(NutFlags.MatchTime)) await _bytes.SignedAsync();
        var head = flags.HasFlag(NutFlags.HeaderIndex) ? await _bytes.UnsignedAsync() : row.HeaderIndex;
        var reserved = flags.HasFlag(NutFlags.Reserved) ? await _bytes.UnsignedAsync() : row.ReservedCount;
        for (var i = 0; i < reserved; i++) await _bytes.UnsignedAsync();
        if (flags.HasFlag(NutFlags.Checksum)) await _bytes.SkipAsync(ChecksumLength);

        // Raw pictures have no side data and no common beginning; if they had, the pixels would be read from the wrong place.
        if (flags.HasFlag(NutFlags.SideData) || Main.ElidedHeads[head].Length > 0)
            throw new InvalidDataException("FFmpeg's NUT stream has side data or a shortened frame, which raw pictures do not.");
        return (ToSeconds(_lastTicks), row.SizeLow + high * row.SizeFactor);
    }

    /// <summary>A short time holds only the low bits, nearest to the last; a long one is offset by their range.</summary>
    private long FullTime(long coded)
    {
        var range = 1L << _timeBits;
        if (coded >= range) return coded - range;
        var start = _lastTicks - (range - 1) / 2;
        return ((coded - start) & (range - 1)) + start;
    }

    /// <summary>By the clock the stream states: FFmpeg halves the ticks it was given until they are finer than 1/48000 s, so the clock it was given does not hold here.</summary>
    private double ToSeconds(long ticks) => (double)((decimal)ticks * _timeBase.Numerator / _timeBase.Denominator);

    private NutMainHeader Main => _main ?? throw new InvalidDataException("FFmpeg's NUT stream begins without its main header.");
}
