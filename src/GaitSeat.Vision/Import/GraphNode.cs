using System.Globalization;
using System.Text;
using System.Text.Json;

namespace GaitSeat.Vision.Import;

/// <summary>One node of a published graph. An attribute that is not there has the default given.</summary>
/// <param name="Inputs">Data inputs, as <c>node</c> or <c>node:output</c>; control inputs are left out.</param>
internal sealed record GraphNode(string Name, string Op, string[] Inputs, JsonElement Attributes)
{
    public bool Bool(string key) => Find(key, "b") is { } v && v.GetBoolean();

    public float Float(string key, float otherwise) => Find(key, "f") is { } v ? v.GetSingle() : otherwise;

    public int Int(string key, int otherwise) => Find(key, "i") is { } v ? IntOf(v) : otherwise;

    public string Text(string key, string otherwise) => Find(key, "s") is { } v ? TextOf(v) : otherwise;

    public int[] Ints(string key) => [.. List(key, "i").Select(IntOf)];

    public string[] Texts(string key) => [.. List(key, "s").Select(TextOf)];

    /// <exception cref="NodeException">The node has fewer inputs.</exception>
    public string Input(int index) =>
        index < Inputs.Length ? Inputs[index] : throw new NodeException($"has {Inputs.Length} inputs, expected at least {index + 1}");

    private JsonElement? Find(string key, string kind) =>
        Attributes.ValueKind == JsonValueKind.Object && Attributes.TryGetProperty(key, out var a) && a.TryGetProperty(kind, out var v) ? v : null;

    private JsonElement.ArrayEnumerator List(string key, string kind) =>
        Find(key, "list") is { } list && list.TryGetProperty(kind, out var v) ? v.EnumerateArray() : default;

    // 64-bit integers of a protobuf are strings in its JSON form.
    private static int IntOf(JsonElement v) =>
        v.ValueKind == JsonValueKind.String ? int.Parse(v.GetString()!, CultureInfo.InvariantCulture) : v.GetInt32();

    private static string TextOf(JsonElement v) => Encoding.UTF8.GetString(v.GetBytesFromBase64());
}
