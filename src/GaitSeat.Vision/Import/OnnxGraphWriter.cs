using System.Globalization;
using System.Runtime.InteropServices;

namespace GaitSeat.Vision.Import;

/// <summary>Collects an ONNX graph and writes it as a model. Field numbers are those of onnx.proto.</summary>
internal sealed class OnnxGraphWriter
{
    /// <summary>
    /// ONNX operator set: since 18 <c>ReduceMean</c> takes its axes as an input and <c>Resize</c> knows <c>axes</c>.
    /// </summary>
    private const int Opset = 18;

    /// <summary>ONNX file version that came with operator set 18.</summary>
    private const int IrVersion = 8;

    private const int FloatType = 1;
    private const int Int64Type = 7;
    private readonly ProtoWriter _graph = new();
    private int _names;

    public string NewName() => "t" + (++_names).ToString(CultureInfo.InvariantCulture);

    /// <summary>Adds a node of one output and returns the output's name.</summary>
    public string Node(string op, IEnumerable<string> inputs, params IEnumerable<OnnxAttribute> attributes)
    {
        var output = NewName();
        Node(op, inputs, [output], attributes);
        return output;
    }

    public void Node(string op, IEnumerable<string> inputs, IEnumerable<string> outputs, params IEnumerable<OnnxAttribute> attributes)
    {
        var node = new ProtoWriter();
        foreach (var i in inputs) node.Text(1, i);
        foreach (var o in outputs) node.Text(2, o);
        node.Text(4, op);
        foreach (var a in attributes) node.Message(5, a.Message);
        _graph.Message(1, node);
    }

    public string Floats(float[] values, params int[] shape) => Tensor(FloatType, MemoryMarshal.AsBytes<float>(values), shape);

    public string Longs(params long[] values) => Tensor(Int64Type, MemoryMarshal.AsBytes<long>(values), [values.Length]);

    /// <summary>Adds the input: a free batch axis, then the given ones.</summary>
    public void Input(string name, int[] shapeAfterBatch)
    {
        var shape = new ProtoWriter().Message(1, new ProtoWriter().Text(2, "N"));
        foreach (var d in shapeAfterBatch) shape.Message(1, new ProtoWriter().Int(1, d));
        _graph.Message(11, ValueInfo(name, FloatTensor().Message(2, shape)));
    }

    public void Output(string name) => _graph.Message(12, ValueInfo(name, FloatTensor()));

    public byte[] ToModel() =>
        new ProtoWriter()
            .Int(1, IrVersion)
            .Text(2, "GaitSeat")
            .Message(7, _graph.Text(2, "imported"))
            .Message(8, new ProtoWriter().Text(1, "").Int(2, Opset))
            .Written.ToArray();

    private string Tensor(int type, ReadOnlySpan<byte> littleEndian, int[] shape)
    {
        var name = NewName();
        var tensor = new ProtoWriter();
        foreach (var d in shape) tensor.Int(1, d);
        _graph.Message(5, tensor.Int(2, type).Text(8, name).Bytes(9, littleEndian));
        return name;
    }

    private static ProtoWriter FloatTensor() => new ProtoWriter().Int(1, FloatType);

    private static ProtoWriter ValueInfo(string name, ProtoWriter tensorType) =>
        new ProtoWriter().Text(1, name).Message(2, new ProtoWriter().Message(1, tensorType));
}
