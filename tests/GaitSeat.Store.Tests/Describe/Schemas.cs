using System.Text.Json;
using Json.Schema;

namespace GaitSeat.Store.Tests.Describe;

/// <summary>The schemas beside this file; see their README for where they come from.</summary>
internal static class Schemas
{
    internal static JsonSchema DataPackage { get; } = Read("data-package.json", root => root);

    /// <summary>The Table Schema alone: the rest of that profile asks for CSV.</summary>
    internal static JsonSchema TableSchema { get; } = Read("tabular-data-resource.json", root => root.GetProperty("properties").GetProperty("schema"));

    internal static JsonSchema Croissant { get; } = Read("croissant-rules.json", root => root);

    /// <returns>Where and what, one line a fault.</returns>
    internal static IReadOnlyList<string> Faults(JsonSchema schema, JsonElement found)
    {
        var result = schema.Evaluate(found, new() { OutputFormat = OutputFormat.List });
        return result.IsValid ? [] : [.. (result.Details ?? []).Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}")), "not valid"];
    }

    private static JsonSchema Read(string name, Func<JsonElement, JsonElement> part)
    {
        var text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Describe", "Schemas", name)).Replace("http://json-schema.org/draft-04/schema#", "https://json-schema.org/draft/2019-09/schema", StringComparison.Ordinal);
        using var json = JsonDocument.Parse(text);
        return JsonSchema.FromText(part(json.RootElement).GetRawText(), new() { Dialect = Dialect.Draft201909 });
    }
}
