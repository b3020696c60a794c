using System.Buffers.Binary;
using System.Text;

namespace GaitSeat.Footage;

/// <summary>
/// What the index (moov) of an MP4 or QuickTime file says that FFmpeg does not pass on: whether it is whole, and whether the pictures are protected
/// (ISO/IEC 14496-12 boxes, 23001-7 common encryption).
/// </summary>
/// <param name="IsCut">The file ends within its index.</param>
/// <param name="IsProtected">There are boxes that only encrypted tracks have.</param>
internal sealed record Mp4Index(bool IsCut, bool IsProtected)
{
    /// <summary>An index of more than this is not searched. Two hours at 240 Hz take about 30 MB.</summary>
    private const int MaxIndexBytes = 128 * 1024 * 1024;

    private static readonly byte[][] ProtectedBoxes = ["encv"u8.ToArray(), "tenc"u8.ToArray(), "senc"u8.ToArray(), "drmi"u8.ToArray()];

    /// <returns>Null if the file has no index box.</returns>
    public static Mp4Index? Read(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var head = new byte[16];
        for (long at = 0; at + 8 <= file.Length;)
        {
            file.Position = at;
            var got = file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
            long size = BinaryPrimitives.ReadUInt32BigEndian(head);
            if (size == 1 && got == head.Length) size = BinaryPrimitives.ReadInt64BigEndian(head.AsSpan(8));
            if (size == 0) size = file.Length - at;
            if (size < 8) return null;
            if (Encoding.ASCII.GetString(head, 4, 4) == "moov") return Judge(file, at, size);
            if (size > file.Length - at) return null;
            at += size;
        }

        return null;
    }

    private static Mp4Index Judge(FileStream file, long at, long size)
    {
        var present = Math.Min(size, file.Length - at);
        if (present > MaxIndexBytes) return new(size > present, false);
        file.Position = at;
        var index = new byte[present];
        file.ReadExactly(index);
        return new(size > present, ProtectedBoxes.Any(box => index.AsSpan().IndexOf(box) >= 0));
    }
}
