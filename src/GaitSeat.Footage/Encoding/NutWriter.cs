namespace GaitSeat.Footage;

/// <summary>Writes raw RGB frames with their times as a NUT stream, the least FFmpeg's reader takes (NUT Open Container Format, version 3).</summary>
internal sealed class NutWriter(Stream destination, int widthPx, int heightPx, int ticksPerSecond)
{
    private static readonly byte[] FileMark = "nut/multimedia container\0"u8.ToArray();
    private const ulong MainStart = 0x4E4D_7A56_1F5F_04AD;
    private const ulong StreamStart = 0x4E53_1140_5BF2_F9DB;
    private const ulong SyncStart = 0x4E4B_E4AD_EECA_4569;
    private const int KeyFlag = 1;
    private const int TimeBits = 7;

    /// <summary>Everything a frame may have is coded with it; one row of the code table is enough.</summary>
    private const int FrameFlags = KeyFlag | (int)(NutFlags.CodedTime | NutFlags.SizeMsb | NutFlags.Checksum);
    private const byte FrameCode = 1;
    private bool _started;

    /// <param name="ticks">Presentation time, ticks; higher than before.</param>
    public async ValueTask WriteFrameAsync(long ticks, ReadOnlyMemory<byte> pixels, CancellationToken cancellationToken)
    {
        var head = new NutBlock();
        if (!_started) WriteHeaders(head);
        _started = true;

        // A sync point before every frame: the reader needs one now and then, and next to a picture it costs nothing.
        head.Packet(SyncStart, body => body.Unsigned(ticks).Unsigned(0));
        var frame = new NutBlock().Byte(FrameCode).Unsigned(ticks + (1L << TimeBits)).Unsigned(pixels.Length);
        head.Bytes(frame.WithChecksum());
        await destination.WriteAsync(head.Written, cancellationToken);
        await destination.WriteAsync(pixels, cancellationToken);
    }

    private void WriteHeaders(NutBlock block)
    {
        block.Bytes(FileMark);
        block.Packet(MainStart, MainHeader);
        block.Packet(StreamStart, StreamHeader);
    }

    private void MainHeader(NutBlock body)
    {
        const int Version = 3, MaxDistance = 65_536, Codes = 256, Fields = 6, SizeFactor = 1;
        body.Unsigned(Version).Unsigned(1).Unsigned(MaxDistance);
        body.Unsigned(1).Unsigned(1).Unsigned(ticksPerSecond);

        // Rows: one invalid code, the frame code, the rest invalid ('N' is left out of the count).
        Row((int)NutFlags.Invalid, 1);
        Row(FrameFlags, 1);
        Row((int)NutFlags.Invalid, Codes - 3);
        body.Unsigned(0);

        void Row(int flags, int count) => body.Unsigned(flags).Unsigned(Fields).Signed(0).Unsigned(SizeFactor).Unsigned(0).Unsigned(0).Unsigned(0).Unsigned(count);
    }

    private void StreamHeader(NutBlock body)
    {
        const int Video = 0, MaxTimeDistance = 1 << 20;
        body.Unsigned(0).Unsigned(Video);
        body.Unsigned(4).Bytes("RGB\x18"u8);
        body.Unsigned(0).Unsigned(TimeBits).Unsigned(MaxTimeDistance).Unsigned(0).Unsigned(0).Unsigned(0);
        body.Unsigned(widthPx).Unsigned(heightPx).Unsigned(1).Unsigned(1).Unsigned(0);
    }
}
