using System.Buffers.Binary;
using System.Text;

namespace GaitSeat.Footage.Tests;

/// <summary>Changes in MP4 files that FFmpeg will not make, by the box layouts of ISO/IEC 14496-12.</summary>
internal static class Mp4Surgery
{
    /// <summary>Writes a display matrix that turns the picture clockwise: the 3 x 3 matrix of the track header, 16.16 fixed point.</summary>
    public static void Turn(byte[] file, int clockwiseDegrees)
    {
        var (cos, sin) = clockwiseDegrees switch { 0 => (1, 0), 90 => (0, 1), 180 => (-1, 0), 270 => (0, -1), _ => throw new ArgumentOutOfRangeException(nameof(clockwiseDegrees)) };
        var matrix = file.AsSpan(Find(file, "tkhd") + 4 + 40);
        int[] values = [cos << 16, sin << 16, 0, -sin << 16, cos << 16];
        for (var i = 0; i < values.Length; i++) BinaryPrimitives.WriteInt32BigEndian(matrix[(4 * i)..], values[i]);
    }

    public static void RenameCodec(byte[] file, string from, string to) =>
        Encoding.ASCII.GetBytes(to).CopyTo(file, Find(file, from));

    /// <summary>Replaces the data reference "in this file" by a Macintosh alias to another one (QuickTime File Format, "alis"; path record type 2).</summary>
    public static byte[] PointTo(byte[] file, string path)
    {
        var alias = Alias(path);
        var reference = Find(file, "url ") - 4;
        var size = BinaryPrimitives.ReadInt32BigEndian(file.AsSpan(reference));
        byte[] longer = [.. file[..reference], .. alias, .. file[(reference + size)..]];
        foreach (var box in (string[])["dref", "dinf", "minf", "mdia", "trak", "moov"])
        {
            var at = longer.AsSpan(Find(longer, box) - 4);
            BinaryPrimitives.WriteInt32BigEndian(at, BinaryPrimitives.ReadInt32BigEndian(at) + alias.Length - size);
        }

        return longer;
    }

    public static int Find(byte[] file, string type)
    {
        var at = file.AsSpan().IndexOf(Encoding.ASCII.GetBytes(type));
        return at >= 0 ? at : throw new InvalidOperationException($"The file has no '{type}'.");
    }

    private static byte[] Alias(string path)
    {
        var name = Encoding.ASCII.GetBytes(path);
        var body = new byte[150 + 4 + (name.Length + 1) / 2 * 2 + 4];
        BinaryPrimitives.WriteInt16BigEndian(body.AsSpan(130), 1);
        BinaryPrimitives.WriteInt16BigEndian(body.AsSpan(132), 1);
        BinaryPrimitives.WriteInt16BigEndian(body.AsSpan(150), 2);
        BinaryPrimitives.WriteInt16BigEndian(body.AsSpan(152), (short)name.Length);
        name.CopyTo(body, 154);
        BinaryPrimitives.WriteInt16BigEndian(body.AsSpan(body.Length - 4), -1);
        var box = new byte[12 + body.Length];
        BinaryPrimitives.WriteInt32BigEndian(box, box.Length);
        "alis"u8.CopyTo(box.AsSpan(4));
        body.CopyTo(box, 12);
        return box;
    }
}
