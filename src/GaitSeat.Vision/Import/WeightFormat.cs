using System.Text.Json;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Import;

/// <summary>How one weight lies in its file.</summary>
/// <param name="Stored">Type of the bytes.</param>
/// <param name="IsWhole">Whether the weight itself is of whole numbers (int32, bool).</param>
/// <param name="Scale">A stored whole number times this ...</param>
/// <param name="Min">... plus this is the weight (quantised weights; 1 and 0 otherwise).</param>
internal sealed record WeightFormat(string Name, int[] Shape, StoredType Stored, bool IsWhole, double Scale, double Min)
{
    public int Count => Shape.Aggregate(1, (a, d) => checked(a * d));

    public int ByteCount => checked(Count * Stored switch
    {
        StoredType.Float32 or StoredType.Int32 => 4,
        StoredType.Float16 or StoredType.UInt16 => 2,
        _ => 1,
    });

    public static WeightFormat Read(string topologyPath, JsonElement weight)
    {
        var name = weight.GetProperty("name").GetString()!;
        var type = weight.GetProperty("dtype").GetString()!;
        if (type is not ("float32" or "int32" or "bool")) throw Unknown(topologyPath, name, type, "float32, int32, bool");
        var isQuantised = weight.TryGetProperty("quantization", out var q);
        var stored = isQuantised ? q.GetProperty("dtype").GetString()! : type;
        return new WeightFormat(
            name,
            [.. weight.GetProperty("shape").EnumerateArray().Select(d => d.GetInt32())],
            stored switch
            {
                "float32" => StoredType.Float32,
                "int32" => StoredType.Int32,
                "bool" => StoredType.Bool,
                "float16" => StoredType.Float16,
                "uint8" => StoredType.UInt8,
                "uint16" => StoredType.UInt16,
                _ => throw Unknown(topologyPath, name, stored, "float16, uint8, uint16"),
            },
            type != "float32",
            isQuantised && q.TryGetProperty("scale", out var scale) ? scale.GetDouble() : 1,
            isQuantised && q.TryGetProperty("min", out var min) ? min.GetDouble() : 0);
    }

    private static ModelException Unknown(string path, string name, string found, string supported) =>
        new($"{path}: weight '{name}' is of type {found}; supported: {supported}");
}

internal enum StoredType
{
    Float32,
    Int32,
    Bool,
    Float16,
    UInt8,
    UInt16,
}
