using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;

namespace GaitSeat.Vision.Import;

/// <summary>A constant: float data (or ints widened to float-free long data) plus shape.</summary>
sealed record Const(float[]? F, int[]? I, int[] Shape)
{
    public int Count => F?.Length ?? I!.Length;
    public int[] Ints => I ?? throw new InvalidDataException("integer constant expected");
    public float[] Floats => F ?? Array.ConvertAll(I!, x => (float)x);
}

sealed record TfNode(string Name, string Op, string[] Inputs, JsonElement Attr)
{
    JsonElement? A(string k) => Attr.ValueKind == JsonValueKind.Object && Attr.TryGetProperty(k, out var v) ? v : null;
    public bool Bool(string k) => A(k)?.TryGetProperty("b", out var v) == true && v.GetBoolean();
    public float Float(string k, float d) => A(k)?.TryGetProperty("f", out var v) == true ? v.GetSingle() : d;
    public int Int(string k, int d) => A(k)?.TryGetProperty("i", out var v) == true ? ToInt(v) : d;
    public string? Text(string k) => A(k)?.TryGetProperty("s", out var v) == true ? B64(v) : null;
    public int[] Ints(string k) => List(k, "i").Select(ToInt).ToArray();
    public string[] Texts(string k) => List(k, "s").Select(B64).ToArray();

    JsonElement.ArrayEnumerator List(string k, string kind) =>
        A(k)?.TryGetProperty("list", out var l) == true && l.TryGetProperty(kind, out var v) ? v.EnumerateArray() : default;

    static int ToInt(JsonElement v) => v.ValueKind == JsonValueKind.String ? int.Parse(v.GetString()!) : v.GetInt32();
    static string B64(JsonElement v) => Encoding.UTF8.GetString(Convert.FromBase64String(v.GetString()!));
}

/// <summary>TFJS graph-model reader: topology + weight manifest (float32, int32, bool; float16/uint8/uint16 quantised).</summary>
sealed class TfjsModel
{
    public Dictionary<string, TfNode> Nodes { get; } = [];
    public Dictionary<string, Const> Weights { get; } = [];

    public static TfjsModel Load(string jsonPath)
    {
        var m = new TfjsModel();
        using var stream = File.OpenRead(jsonPath);
        var root = JsonDocument.Parse(stream).RootElement.Clone();
        foreach (var n in root.GetProperty("modelTopology").GetProperty("node").EnumerateArray())
        {
            var inputs = n.TryGetProperty("input", out var i) ? i.EnumerateArray().Select(x => x.GetString()!).Where(x => x[0] != '^').ToArray() : [];
            var name = n.GetProperty("name").GetString()!;
            m.Nodes[name] = new(name, n.GetProperty("op").GetString()!, inputs, n.TryGetProperty("attr", out var a) ? a : default);
        }
        foreach (var group in root.GetProperty("weightsManifest").EnumerateArray())
        {
            var blob = group.GetProperty("paths").EnumerateArray()
                .SelectMany(p => File.ReadAllBytes(Path.Combine(Path.GetDirectoryName(jsonPath)!, p.GetString()!))).ToArray();
            var at = 0;
            foreach (var w in group.GetProperty("weights").EnumerateArray())
            {
                var shape = w.GetProperty("shape").EnumerateArray().Select(x => x.GetInt32()).ToArray();
                m.Weights[w.GetProperty("name").GetString()!] = Read(w, shape, blob, ref at);
            }
            if (at != blob.Length) throw new InvalidDataException($"{jsonPath}: {blob.Length - at} weight bytes left over");
        }
        return m;
    }

    static Const Read(JsonElement w, int[] shape, byte[] blob, ref int at)
    {
        var n = shape.Aggregate(1, (a, b) => a * b);
        var dtype = w.GetProperty("dtype").GetString()!;
        var stored = w.TryGetProperty("quantization", out var q) ? q.GetProperty("dtype").GetString()! : dtype;
        var size = stored switch { "float32" or "int32" => 4, "float16" or "uint16" => 2, "uint8" or "bool" => 1, _ => throw new NotSupportedException(stored) };
        var raw = blob.AsSpan(at, n * size);
        at += n * size;
        if (dtype == "int32") return new(null, MemoryMarshal.Cast<byte, int>(raw).ToArray(), shape);
        if (stored == "bool") return new(null, Array.ConvertAll(raw.ToArray(), b => (int)b), shape);
        var f = new float[n];
        float scale = stored.StartsWith("uint") ? q.GetProperty("scale").GetSingle() : 1, min = stored.StartsWith("uint") ? q.GetProperty("min").GetSingle() : 0;
        for (var i = 0; i < n; i++)
            f[i] = stored switch
            {
                "float32" => BitConverter.ToSingle(raw[(i * 4)..]),
                "float16" => (float)BitConverter.ToHalf(raw[(i * 2)..]),
                "uint16" => BitConverter.ToUInt16(raw[(i * 2)..]) * scale + min,
                _ => raw[i] * scale + min,
            };
        return new(f, null, shape);
    }
}
