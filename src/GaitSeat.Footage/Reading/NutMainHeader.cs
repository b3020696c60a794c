namespace GaitSeat.Footage;

/// <summary>The head of a NUT stream: time bases, the table of frame codes, and the beginnings that frames may leave out.</summary>
internal sealed record NutMainHeader((long Numerator, long Denominator)[] TimeBases, NutFrameCode[] Codes, byte[][] ElidedHeads)
{
    private const int CodeCount = 256;

    public static async Task<NutMainHeader> ReadAsync(NutBytes bytes)
    {
        var version = await bytes.UnsignedAsync();
        if (version > 3) await bytes.UnsignedAsync();
        await bytes.UnsignedAsync(); // number of streams
        await bytes.UnsignedAsync(); // greatest distance between sync points
        var timeBases = new (long, long)[await bytes.UnsignedAsync()];
        for (var i = 0; i < timeBases.Length; i++) timeBases[i] = (await bytes.UnsignedAsync(), await bytes.UnsignedAsync());
        var codes = await ReadCodesAsync(bytes);
        return new(timeBases, codes, await ReadHeadsAsync(bytes));
    }

    private static async Task<NutFrameCode[]> ReadCodesAsync(NutBytes bytes)
    {
        var codes = new NutFrameCode[CodeCount];
        long timeDelta = 0, factor = 1;
        var headerIndex = 0L;
        for (var i = 0; i < CodeCount;)
        {
            var flags = (NutFlags)await bytes.UnsignedAsync();
            var fields = await bytes.UnsignedAsync();
            if (fields > 0) timeDelta = await bytes.SignedAsync();
            if (fields > 1) factor = await bytes.UnsignedAsync();
            if (fields > 2) await bytes.UnsignedAsync(); // stream: there is one
            var low = fields > 3 ? await bytes.UnsignedAsync() : 0;
            var reserved = fields > 4 ? await bytes.UnsignedAsync() : 0;
            var count = fields > 5 ? await bytes.UnsignedAsync() : factor - low;
            if (fields > 6) await bytes.SignedAsync(); // match time
            if (fields > 7) headerIndex = await bytes.UnsignedAsync();
            for (var more = 8; more < fields; more++) await bytes.UnsignedAsync();
            if (count <= 0) throw new InvalidDataException("FFmpeg's NUT stream has an empty row in its frame codes.");
            for (var j = 0; j < count && i < CodeCount; i++)
            {
                // 'N' begins a start code and is never a frame.
                codes[i] = i == 'N' ? new(NutFlags.Invalid, 0, 0, 0, 0, 0) : new(flags, timeDelta, factor, low + j, reserved, (int)headerIndex);
                if (i != 'N') j++;
            }
        }

        return codes;
    }

    private static async Task<byte[][]> ReadHeadsAsync(NutBytes bytes)
    {
        var heads = new byte[1 + await bytes.UnsignedAsync()][];
        heads[0] = [];
        for (var i = 1; i < heads.Length; i++)
        {
            heads[i] = new byte[await bytes.UnsignedAsync()];
            await bytes.ReadAsync(heads[i]);
        }

        return heads;
    }
}
