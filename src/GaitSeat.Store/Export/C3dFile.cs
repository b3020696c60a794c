using System.Buffers.Binary;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// C3D as its public specification describes it (c3d.org, "The C3D File Format"): a header block of 512 bytes, the parameter section, the points as 32-bit floats, all little endian
/// (processor type 84). A position that is not known is 0 with a residual of -1.
/// </summary>
internal static class C3dFile
{
    private const int BlockBytes = 512;
    private const byte Key = 0x50;
    private const ushort MostFrames = ushort.MaxValue;
    private static readonly BodyPoint[] Points = Enum.GetValues<BodyPoint>();

    /// <exception cref="ArgumentException">There are more frames than the header can count.</exception>
    internal static byte[] Bytes(PlaneMotion motion)
    {
        if (motion.Frames.Count is 0 or > MostFrames) throw new ArgumentException($"{motion.Frames.Count} frames; 1 to {MostFrames} are allowed.", nameof(motion));
        var first = Parameters(motion, dataStart: 0);
        var dataStart = 2 + first.Length / BlockBytes;
        var parameters = Parameters(motion, dataStart);
        var data = Data(motion);
        var file = new byte[BlockBytes + parameters.Length + data.Length];
        Header(motion, dataStart).CopyTo(file, 0);
        parameters.CopyTo(file, BlockBytes);
        data.CopyTo(file, BlockBytes + parameters.Length);
        return file;
    }

    private static byte[] Header(PlaneMotion motion, int dataStart)
    {
        var block = new byte[BlockBytes];
        block[0] = 2;
        block[1] = Key;
        void Word(int number, int value) => BinaryPrimitives.WriteUInt16LittleEndian(block.AsSpan(2 * (number - 1)), (ushort)value);
        Word(2, Points.Length);
        Word(4, 1);
        Word(5, motion.Frames.Count);
        // A negative scale says that the points are floats.
        BinaryPrimitives.WriteSingleLittleEndian(block.AsSpan(12), -1);
        Word(9, dataStart);
        BinaryPrimitives.WriteSingleLittleEndian(block.AsSpan(20), (float)motion.RateHz);
        return block;
    }

    private static byte[] Parameters(PlaneMotion motion, int dataStart)
    {
        var section = new C3dParameters();
        section.Group(1, "POINT", "Body points of the rider, in the plane of the picture");
        section.Whole(1, "USED", Points.Length, "Number of points");
        section.Real(1, "SCALE", -1, "Negative: points are floats");
        section.Real(1, "RATE", (float)motion.RateHz, "Frames per second");
        section.Whole(1, "DATA_START", dataStart, "First block of the points");
        section.Whole(1, "FRAMES", motion.Frames.Count, "Number of frames");
        section.Text(1, "UNITS", ["mm"], "Unit of the points");
        section.Text(1, "X_SCREEN", ["+X"], "Forward, the way the horse goes");
        section.Text(1, "Y_SCREEN", ["+Y"], "Up");
        section.Text(1, "LABELS", [.. Points.Select(p => MarkerNames.Of(p, motion.Facing))], "Names; L and R are the rider's sides");
        section.Text(1, "DESCRIPTIONS", [.. Points.Select(p => p.ToTerm())], "Names in the dataset");
        section.Group(2, "ANALOG", "None");
        section.Whole(2, "USED", 0, "Number of analog channels");
        section.Real(2, "RATE", (float)motion.RateHz, "As the points");
        section.Group(3, "MANUFACTURER", "Who wrote this file");
        section.Text(3, "SOFTWARE", ["GaitSeat"], "Program");
        return section.ToBytes(BlockBytes);
    }

    private static byte[] Data(PlaneMotion motion)
    {
        const int PointBytes = 16;
        var size = motion.Frames.Count * Points.Length * PointBytes;
        var data = new byte[(size + BlockBytes - 1) / BlockBytes * BlockBytes];
        var at = 0;
        void Write(float value)
        {
            BinaryPrimitives.WriteSingleLittleEndian(data.AsSpan(at), value);
            at += 4;
        }

        foreach (var frame in motion.Frames)
        {
            foreach (var p in Points)
            {
                double forward = frame.ForwardMm[(int)p], up = frame.UpMm[(int)p];
                var known = double.IsFinite(forward) && double.IsFinite(up);
                Write(known ? (float)forward : 0);
                Write(known ? (float)up : 0);
                Write(0);
                Write(known ? 0 : -1);
            }
        }

        return data;
    }
}
