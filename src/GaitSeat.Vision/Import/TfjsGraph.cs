using System.Text.Json;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Import;

/// <summary>A published graph model: topology (<c>.json</c>) and the weights it names.</summary>
public sealed class TfjsGraph
{
    private TfjsGraph(string path, Dictionary<string, GraphNode> nodes, Dictionary<string, Constant> weights)
    {
        Path = path;
        Nodes = nodes;
        Weights = weights;
    }

    /// <summary>The topology file, for messages.</summary>
    public string Path { get; }

    internal IReadOnlyDictionary<string, GraphNode> Nodes { get; }

    internal IReadOnlyDictionary<string, Constant> Weights { get; }

    /// <exception cref="ModelException">A file is missing, short or not of this format; the message says which, and the remedy.</exception>
    public static TfjsGraph Read(string topologyPath)
    {
        ArgumentException.ThrowIfNullOrEmpty(topologyPath);
        if (!File.Exists(topologyPath)) throw new ModelException($"model topology not found: {topologyPath}; {Restore.Remedy}");
        try
        {
            using var stream = File.OpenRead(topologyPath);
            using var document = JsonDocument.Parse(stream);
            var root = document.RootElement.Clone();
            var nodes = root.GetProperty("modelTopology").GetProperty("node").EnumerateArray().Select(ReadNode);
            return new TfjsGraph(topologyPath, nodes.ToDictionary(n => n.Name), WeightReader.Read(topologyPath, root.GetProperty("weightsManifest")));
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or ArgumentException)
        {
            throw new ModelException($"{topologyPath} is no graph model (modelTopology with nodes, weightsManifest): {e.Message}", e);
        }
    }

    private static GraphNode ReadNode(JsonElement node)
    {
        string[] inputs = node.TryGetProperty("input", out var list)
            ? [.. list.EnumerateArray().Select(i => i.GetString()!).Where(i => !i.StartsWith('^'))]
            : [];
        var attributes = node.TryGetProperty("attr", out var a) ? a : default;
        return new GraphNode(node.GetProperty("name").GetString()!, node.GetProperty("op").GetString()!, inputs, attributes);
    }
}
