using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace GaitSeat.Store;

/// <summary>JSON for people and programs: indented, letters of any language as they are, LF.</summary>
internal static class PageJson
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    internal static string Text(JsonNode node) => node.ToJsonString(Options) + "\n";

    internal static JsonArray Array(IEnumerable<JsonNode?> nodes) => [.. nodes];

    internal static JsonArray Array(IEnumerable<string> texts) => [.. texts.Select(t => (JsonNode?)JsonValue.Create(t))];
}
