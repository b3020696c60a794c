using System.Buffers.Binary;
using System.Text;

namespace GaitSeat.Pipeline.Tests.Hostile;

/// <summary>Ways to spoil a video file. Each takes whole files and a source of chance and gives the bytes of a spoilt one.</summary>
internal static class Mutations
{
    /// <summary>Boxes and elements whose numbers a demuxer believes: times, lengths, counts, sizes, matrices.</summary>
    private static readonly string[] _numberBoxes = ["mvhd", "mdhd", "tkhd", "stts", "ctts", "stsz", "stsc", "stco", "stss", "elst", "avc1", "avcC", "mp4v", "dref", "hdlr", "stsd"];

    private static readonly ulong[] _extremes = [0, 1, 0x7fff_ffff, 0x8000_0000, 0xffff_ffff, 0x7fff_ffff_ffff_ffff, 0x8000_0000_0000_0000, 0xffff_ffff_ffff_ffff];

    public static readonly IReadOnlyList<(string Name, Func<IReadOnlyList<byte[]>, Random, byte[]> Make)> All =
    [
        ("bits", (files, chance) => Flip(Any(files, chance), chance, 0, int.MaxValue)),
        ("head-bits", (files, chance) => Flip(Any(files, chance), chance, 0, 2048)),
        ("cut", (files, chance) => Any(files, chance) is var f ? f[..chance.Next(1, f.Length)] : []),
        ("spliced", Splice),
        ("lying-sizes", (files, chance) => Overwrite(Any(files, chance), chance, afterName: -4)),
        ("lying-numbers", (files, chance) => Overwrite(Any(files, chance), chance, afterName: 4)),
        ("absurd-picture", AbsurdPicture),
        ("filled", Fill),
        ("repeated", Repeat),
        ("shuffled", Shuffle),
        ("noise", (_, chance) => Noise(chance)),
        ("noise-after-head", (files, chance) => [.. Any(files, chance).Take(chance.Next(16, 1024)), .. Noise(chance)]),
    ];

    private static byte[] Any(IReadOnlyList<byte[]> files, Random chance) => (byte[])files[chance.Next(files.Count)].Clone();

    private static byte[] Flip(byte[] file, Random chance, int from, int to)
    {
        var bits = 1 << chance.Next(0, 9);
        for (var i = 0; i < bits; i++) file[chance.Next(from, Math.Min(to, file.Length))] ^= (byte)(1 << chance.Next(8));
        return file;
    }

    private static byte[] Splice(IReadOnlyList<byte[]> files, Random chance)
    {
        byte[] head = Any(files, chance), tail = Any(files, chance);
        return [.. head[..chance.Next(1, head.Length)], .. tail[chance.Next(tail.Length)..]];
    }

    /// <summary>An extreme number, of 32 or 64 bits, near the name of a box; in files without such boxes anywhere in the head.</summary>
    private static byte[] Overwrite(byte[] file, Random chance, int afterName)
    {
        var places = _numberBoxes.SelectMany(name => Places(file, name)).ToArray();
        for (var n = chance.Next(1, 4); n > 0; n--)
        {
            var at = places.Length > 0
                ? places[chance.Next(places.Length)] + afterName + (afterName > 0 ? 4 * chance.Next(0, 12) : 0)
                : chance.Next(Math.Min(file.Length, 1024) - 8);
            if (at < 0 || at + 8 > file.Length) continue;
            var value = _extremes[chance.Next(_extremes.Length)];
            if (value > uint.MaxValue) BinaryPrimitives.WriteUInt64BigEndian(file.AsSpan(at), value);
            else BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(at), (uint)value);
        }

        return file;
    }

    /// <summary>Up to 65,535 x 65,535 px in the sample entry; 16 GiB a picture if anyone believed it.</summary>
    private static byte[] AbsurdPicture(IReadOnlyList<byte[]> files, Random chance)
    {
        const int WidthAfterName = 28;
        var file = Any(files, chance);
        foreach (var at in Places(file, "avc1").Concat(Places(file, "mp4v")).Where(p => p + WidthAfterName + 4 <= file.Length))
        {
            BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(at + WidthAfterName), (ushort)(chance.Next(2) == 0 ? 65_535 : 16_384));
            BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(at + WidthAfterName + 2), (ushort)(chance.Next(2) == 0 ? 65_535 : 16_384));
        }

        return file;
    }

    private static byte[] Fill(IReadOnlyList<byte[]> files, Random chance)
    {
        var file = Any(files, chance);
        var from = chance.Next(file.Length);
        Array.Fill(file, chance.Next(2) == 0 ? (byte)0 : (byte)0xff, from, chance.Next(file.Length - from));
        return file;
    }

    private static byte[] Repeat(IReadOnlyList<byte[]> files, Random chance)
    {
        var file = Any(files, chance);
        var from = chance.Next(file.Length);
        var part = file[from..Math.Min(file.Length, from + chance.Next(1, 4096))];
        return [.. file[..from], .. Enumerable.Repeat(part, chance.Next(2, 40)).SelectMany(p => p), .. file[from..]];
    }

    private static byte[] Shuffle(IReadOnlyList<byte[]> files, Random chance)
    {
        var chunks = Any(files, chance).Chunk(1024).ToArray();
        chance.Shuffle(chunks);
        return [.. chunks.SelectMany(c => c)];
    }

    private static byte[] Noise(Random chance)
    {
        var bytes = new byte[chance.Next(1, 20_000)];
        chance.NextBytes(bytes);
        return bytes;
    }

    private static IEnumerable<int> Places(byte[] file, string name)
    {
        var mark = Encoding.ASCII.GetBytes(name);
        for (int at = 0, next; (next = file.AsSpan(at).IndexOf(mark)) >= 0; at += next + 4) yield return at + next;
    }
}
