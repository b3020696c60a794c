using System.Buffers.Binary;
using System.Text;

namespace GaitSeat.Store;

/// <summary>The parameter section of a C3D file: groups and parameters one after another, each with the distance to the next; the last has distance 0.</summary>
internal sealed class C3dParameters
{
    private const byte IntelProcessor = 84;
    private const sbyte CharacterType = -1;
    private const sbyte WholeType = 2;
    private const sbyte RealType = 4;
    private readonly List<(byte[] Head, byte[] Body)> _records = [];

    internal void Group(sbyte id, string name, string description) => Add((sbyte)-id, name, [], description);

    internal void Whole(sbyte group, string name, int value, string description)
    {
        var data = new byte[2];
        BinaryPrimitives.WriteUInt16LittleEndian(data, checked((ushort)value));
        Add(group, name, [(byte)WholeType, 0, .. data], description);
    }

    internal void Real(sbyte group, string name, float value, string description)
    {
        var data = new byte[4];
        BinaryPrimitives.WriteSingleLittleEndian(data, value);
        Add(group, name, [(byte)RealType, 0, .. data], description);
    }

    /// <summary>Texts of one width, filled with blanks.</summary>
    internal void Text(sbyte group, string name, IReadOnlyList<string> texts, string description)
    {
        var width = texts.Max(t => t.Length);
        var letters = Encoding.ASCII.GetBytes(string.Concat(texts.Select(t => t.PadRight(width))));
        Add(group, name, [unchecked((byte)CharacterType), 2, (byte)width, (byte)texts.Count, .. letters], description);
    }

    internal byte[] ToBytes(int blockBytes)
    {
        var section = new List<byte> { 1, 0x50, 0, IntelProcessor };
        for (var i = 0; i < _records.Count; i++)
        {
            var (head, body) = _records[i];
            // Counted from the distance's own first byte.
            var next = i == _records.Count - 1 ? 0 : 2 + body.Length;
            section.AddRange([.. head, (byte)(next & 0xFF), (byte)(next >> 8), .. body]);
        }

        var blocks = (section.Count + blockBytes - 1) / blockBytes;
        section[2] = checked((byte)blocks);
        section.AddRange(new byte[blocks * blockBytes - section.Count]);
        return [.. section];
    }

    private void Add(sbyte id, string name, byte[] data, string description)
    {
        var text = Encoding.ASCII.GetBytes(description);
        _records.Add(([checked((byte)name.Length), unchecked((byte)id), .. Encoding.ASCII.GetBytes(name)], [.. data, checked((byte)text.Length), .. text]));
    }
}
