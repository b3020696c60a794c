using System.Text;

namespace GaitSeat.Store.Tests.Export;

/// <summary>
/// A reader of C3D written for the tests from the public specification ("The C3D File Format", c3d.org: sections Header, Parameter Header, Group Format, Parameter Format,
/// 3D Point Data Format), apart from the writer: neither NuGet nor npm has a reader. Little-endian files with points as floats only.
/// </summary>
internal sealed class C3dReader
{
    private readonly Dictionary<string, object> _parameters = [];

    internal int Points { get; }

    internal int FirstFrame { get; }

    internal int LastFrame { get; }

    internal float RateHz { get; }

    /// <summary>By frame, then by point: x, y, z and residual.</summary>
    internal float[][][] Data { get; }

    internal object this[string groupAndName] => _parameters[groupAndName];

    internal C3dReader(byte[] file)
    {
        using var reader = new BinaryReader(new MemoryStream(file));
        var parameterBlock = reader.ReadByte();
        Require(reader.ReadByte() == 0x50, "the second byte is 0x50");
        Points = reader.ReadUInt16();
        Require(reader.ReadUInt16() == 0, "no analog measurements");
        (FirstFrame, LastFrame) = (reader.ReadUInt16(), reader.ReadUInt16());
        reader.ReadUInt16();
        Require(reader.ReadSingle() < 0, "a negative scale: points are floats");
        var dataBlock = reader.ReadUInt16();
        reader.ReadUInt16();
        RateHz = reader.ReadSingle();

        reader.BaseStream.Position = 512 * (parameterBlock - 1);
        reader.ReadUInt16();
        var blocks = reader.ReadByte();
        Require(reader.ReadByte() == 84, "processor type Intel");
        Require(dataBlock == parameterBlock + blocks, "the points follow the parameters");
        ReadParameters(reader, reader.BaseStream.Position - 4 + 512 * blocks);

        reader.BaseStream.Position = 512 * (dataBlock - 1);
        Data = [.. Enumerable.Range(FirstFrame, LastFrame - FirstFrame + 1).Select(_ => Enumerable.Range(0, Points).Select(_ => new[] { reader.ReadSingle(), reader.ReadSingle(), reader.ReadSingle(), reader.ReadSingle() }).ToArray())];
        Require(file.Length % 512 == 0, "whole blocks");
    }

    private void ReadParameters(BinaryReader reader, long end)
    {
        var groups = new Dictionary<int, string>();
        var values = new List<(int Group, string Name, object Value)>();
        while (reader.BaseStream.Position < end)
        {
            var length = Math.Abs(reader.ReadSByte());
            if (length == 0) break;
            int id = reader.ReadSByte();
            var name = Encoding.ASCII.GetString(reader.ReadBytes(length));
            var at = reader.BaseStream.Position;
            var next = reader.ReadUInt16();
            if (id < 0) groups.Add(-id, name);
            else values.Add((id, name, Value(reader)));
            if (next == 0) break;
            reader.BaseStream.Position = at + next;
        }

        foreach (var (group, name, value) in values) _parameters.Add($"{groups[group]}:{name}", value);
    }

    private static object Value(BinaryReader reader)
    {
        int type = reader.ReadSByte();
        var dimensions = Enumerable.Range(0, reader.ReadByte()).Select(_ => (int)reader.ReadByte()).ToArray();
        var count = dimensions.Aggregate(1, (a, b) => a * b);
        return type switch
        {
            -1 => Enumerable.Range(0, dimensions.Length > 1 ? dimensions[1] : 1).Select(_ => Encoding.ASCII.GetString(reader.ReadBytes(dimensions[0])).TrimEnd()).ToArray(),
            2 => count == 1 ? (object)(int)reader.ReadUInt16() : Enumerable.Range(0, count).Select(_ => (int)reader.ReadUInt16()).ToArray(),
            4 => count == 1 ? (object)reader.ReadSingle() : Enumerable.Range(0, count).Select(_ => reader.ReadSingle()).ToArray(),
            _ => throw new InvalidDataException($"type {type} is not read here"),
        };
    }

    private static void Require(bool holds, string what)
    {
        if (!holds) throw new InvalidDataException($"Not so: {what}.");
    }
}
