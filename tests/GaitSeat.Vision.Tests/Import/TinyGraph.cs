using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json.Nodes;
using GaitSeat.Vision.Import;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Tests.Import;

/// <summary>A hand-made graph model in a folder of its own: built node by node, written, imported, run.</summary>
internal sealed class TinyGraph : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("tiny-graph-");
    private readonly JsonArray _nodes = [];
    private readonly JsonArray _weights = [];
    private readonly List<byte> _bytes = [];

    public TinyGraph() => Node("x", "Placeholder", []);

    public string TopologyPath => Path.Combine(_folder.FullName, "tiny.json");

    public string WeightsPath => Path.Combine(_folder.FullName, "tiny.bin");

    public TinyGraph Floats(string name, float[] values, params int[] shape) =>
        Weight(name, "float32", shape, MemoryMarshal.AsBytes<float>(values));

    public TinyGraph Ints(string name, int[] values, params int[] shape) =>
        Weight(name, "int32", shape, MemoryMarshal.AsBytes<int>(values));

    public TinyGraph Weight(string name, string type, int[] shape, ReadOnlySpan<byte> bytes, JsonObject? quantisation = null)
    {
        var weight = new JsonObject
        {
            ["name"] = name,
            ["dtype"] = type,
            ["shape"] = new JsonArray([.. shape.Select(d => JsonValue.Create(d))]),
        };
        if (quantisation is not null) weight["quantization"] = quantisation;
        _weights.Add(weight);
        _bytes.AddRange(bytes);
        return Node(name, "Const", []);
    }

    public TinyGraph Node(string name, string op, string[] inputs, params (string Key, object Value)[] attributes)
    {
        var attr = new JsonObject();
        foreach (var (key, value) in attributes) attr[key] = Attribute(value);
        _nodes.Add(new JsonObject
        {
            ["name"] = name,
            ["op"] = op,
            ["input"] = new JsonArray([.. inputs.Select(i => JsonValue.Create(i))]),
            ["attr"] = attr,
        });
        return this;
    }

    /// <summary>A 1 x 1 convolution that copies its input: from here on the importer carries the value channels first.</summary>
    public TinyGraph Copy(string name, string input, int channels)
    {
        var unit = new float[channels * channels];
        for (var c = 0; c < channels; c++) unit[c * channels + c] = 1;
        return Floats(name + "/kernel", unit, 1, 1, channels, channels)
            .Node(name, "Conv2D", [input, name + "/kernel"], ("strides", new[] { 1, 1, 1, 1 }), ("padding", "SAME"));
    }

    public TinyGraph Write(string weightsName = "tiny.bin")
    {
        var root = new JsonObject
        {
            ["format"] = "graph-model",
            ["modelTopology"] = new JsonObject { ["node"] = _nodes.DeepClone() },
            ["weightsManifest"] = new JsonArray(new JsonObject { ["paths"] = new JsonArray(weightsName), ["weights"] = _weights.DeepClone() }),
        };
        File.WriteAllText(TopologyPath, root.ToJsonString());
        File.WriteAllBytes(WeightsPath, [.. _bytes]);
        return this;
    }

    public byte[] Import(string output, params int[] inputShape) =>
        GraphImporter.Import(TfjsGraph.Read(TopologyPath), "x", "input", inputShape, [new ModelOutput(output, "y")]);

    /// <summary>Writes, imports and runs.</summary>
    public (float[] Values, int[] Shape) Run(string output, float[] input, int[] inputShape, int batch = 1)
    {
        Write();
        var path = Path.Combine(_folder.FullName, "tiny.onnx");
        File.WriteAllBytes(path, Import(output, inputShape));
        using var session = new OnnxSession(new ModelFile("tiny", path, ""), threads: 1);
        var y = session.Run(input, batch);
        return (y["y"].ToArray(), y.ShapeOf("y").ToArray());
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static JsonObject Attribute(object value) => value switch
    {
        bool b => new JsonObject { ["b"] = b },
        float f => new JsonObject { ["f"] = f },
        int i => new JsonObject { ["i"] = i.ToString(System.Globalization.CultureInfo.InvariantCulture) },
        string s => new JsonObject { ["s"] = Base64(s) },
        int[] list => new JsonObject { ["list"] = new JsonObject { ["i"] = new JsonArray([.. list.Select(i => JsonValue.Create($"{i}"))]) } },
        string[] list => new JsonObject { ["list"] = new JsonObject { ["s"] = new JsonArray([.. list.Select(s => JsonValue.Create(Base64(s)))]) } },
        _ => throw new NotSupportedException(value.GetType().Name),
    };

    private static string Base64(string text) => Convert.ToBase64String(Encoding.UTF8.GetBytes(text));
}
