using System.Buffers;
using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;

namespace GaitSeat.Vision.Import;

/// <summary>Minimal protobuf writer for the part of onnx.proto that the converter emits.</summary>
sealed class Proto
{
    readonly System.Buffers.ArrayBufferWriter<byte> _s = new();

    void Varint(ulong v)
    {
        while (v >= 0x80) { _s.Write([(byte)(v | 0x80)]); v >>= 7; }
        _s.Write([(byte)v]);
    }

    public Proto Int(int field, long v) { Varint((ulong)(field << 3)); Varint((ulong)v); return this; }

    public Proto Float(int field, float v)
    {
        Varint((ulong)(field << 3 | 5));
        Span<byte> b = stackalloc byte[4];
        BinaryPrimitives.WriteSingleLittleEndian(b, v);
        _s.Write(b);
        return this;
    }

    public Proto Bytes(int field, ReadOnlySpan<byte> b) { Varint((ulong)(field << 3 | 2)); Varint((ulong)b.Length); _s.Write(b); return this; }
    public Proto Str(int field, string v) => Bytes(field, Encoding.UTF8.GetBytes(v));
    public Proto Msg(int field, Proto m) => Bytes(field, m._s.WrittenSpan);
    public byte[] ToArray() => _s.WrittenSpan.ToArray();
}

sealed class OnnxGraph
{
    readonly Proto _graph = new();
    int _next;

    public string NewName(string prefix = "t") => prefix + ++_next;

    public string Node(string op, IEnumerable<string> inputs, params (string Name, object Value)[] attrs)
    {
        var o = NewName();
        Node(op, inputs, [o], attrs);
        return o;
    }

    public void Node(string op, IEnumerable<string> inputs, IEnumerable<string> outputs, params (string Name, object Value)[] attrs)
    {
        var n = new Proto();
        foreach (var i in inputs) n.Str(1, i);
        foreach (var o in outputs) n.Str(2, o);
        n.Str(4, op);
        foreach (var (name, value) in attrs)
        {
            var a = new Proto().Str(1, name);
            switch (value)
            {
                case float f: a.Float(2, f).Int(20, 1); break;
                case int i: a.Int(3, i).Int(20, 2); break;
                case string s: a.Str(4, s).Int(20, 3); break;
                case int[] v: foreach (var x in v) a.Int(8, x); a.Int(20, 7); break;
                default: throw new NotSupportedException(value.GetType().Name);
            }
            n.Msg(5, a);
        }
        _graph.Msg(1, n);
    }

    public string Floats(float[] data, params int[] dims) => Tensor(1, MemoryMarshal.AsBytes<float>(data), dims);
    public string Longs(params long[] data) => Tensor(7, MemoryMarshal.AsBytes<long>(data), [data.Length]);

    string Tensor(int type, ReadOnlySpan<byte> raw, int[] dims)
    {
        var name = NewName("w");
        var t = new Proto();
        foreach (var d in dims) t.Int(1, d);
        _graph.Msg(5, t.Int(2, type).Str(8, name).Bytes(9, raw));
        return name;
    }

    public void Input(string name, params int[] dimsAfterBatch)
    {
        var shape = new Proto().Msg(1, new Proto().Str(2, "N"));
        foreach (var d in dimsAfterBatch) shape.Msg(1, new Proto().Int(1, d));
        _graph.Msg(11, ValueInfo(name, shape));
    }

    public void Output(string name) => _graph.Msg(12, ValueInfo(name, null));

    static Proto ValueInfo(string name, Proto? shape)
    {
        var tt = new Proto().Int(1, 1);
        if (shape != null) tt.Msg(2, shape);
        return new Proto().Str(1, name).Msg(2, new Proto().Msg(1, tt));
    }

    public byte[] ToModel(int opset) =>
        new Proto().Int(1, 8).Msg(7, _graph.Str(2, "g")).Msg(8, new Proto().Str(1, "").Int(2, opset)).ToArray();
}
