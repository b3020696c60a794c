using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Import;

/// <summary>Turns a part of a published graph into an ONNX model with a free batch axis.</summary>
public sealed class GraphImporter
{
    /// <summary>Raised when the same graph gives other bytes than before; part of the cache key.</summary>
    public const int Version = 3;

    private readonly TfjsGraph _graph;
    private readonly ImportState _state;

    private GraphImporter(TfjsGraph graph)
    {
        _graph = graph;
        _state = new ImportState(graph.Weights);
    }

    /// <summary>Imports what lies between one node, which our input takes the place of, and the outputs.</summary>
    /// <param name="inputNode">Node of the graph that the input replaces.</param>
    /// <param name="inputName">Name of the input in the ONNX model.</param>
    /// <param name="inputShape">Shape of the input after the batch axis.</param>
    /// <param name="outputs">Nodes wanted, each in the published layout.</param>
    /// <returns>The bytes of an ONNX file.</returns>
    /// <exception cref="ModelException">A node is missing or not supported; the message names node, file and what is supported.</exception>
    public static byte[] Import(TfjsGraph graph, string inputNode, string inputName, IReadOnlyList<int> inputShape, IEnumerable<ModelOutput> outputs)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(inputShape);
        ArgumentNullException.ThrowIfNull(outputs);
        var importer = new GraphImporter(graph);
        importer.NodeCalled(inputNode, "the input");
        importer._state.Onnx.Input(inputName, [.. inputShape]);
        importer._state.Define(inputNode, new Value(inputName, Layout.Tf, inputShape.Count + 1));
        foreach (var output in outputs) importer.AddOutput(output);
        return importer._state.Onnx.ToModel();
    }

    private void AddOutput(ModelOutput output)
    {
        foreach (var node in InOrder(output.Node)) At(node, () => Add(node));
        At(NodeCalled(output.Node, "an output"), () => _state.Onnx.Node("Identity", [_state.As(Layout.Tf, output.Node)], [output.Name]));
        _state.Onnx.Output(output.Name);
    }

    private void Add(GraphNode node)
    {
        if (node.Inputs.Length > 0 && node.Inputs.All(_state.IsConstant))
        {
            _state.DefineConstant(node.Name, ConstantFolding.Fold(node, _state));
            return;
        }

        if (!OperatorTable.All.TryGetValue(node.Op, out var add))
        {
            throw new NodeException($"the operator is not supported; supported: {string.Join(", ", OperatorTable.All.Keys.Order(StringComparer.Ordinal))}");
        }

        add(node, _state);
    }

    private void At(GraphNode node, Action action)
    {
        try
        {
            action();
        }
        catch (NodeException e)
        {
            throw new ModelException($"cannot import {_graph.Path}: node '{node.Name}' ({node.Op}): {e.Message}", e);
        }
    }

    /// <summary>The nodes an output needs that are not yet there, each after those it needs itself.</summary>
    private List<GraphNode> InOrder(string output)
    {
        var order = new List<GraphNode>();
        var seen = new HashSet<string>();
        var pending = new Stack<(string Name, string AskedBy, bool IsReady)>([(output, "an output", false)]);
        while (pending.TryPop(out var next))
        {
            if (next.IsReady)
            {
                order.Add(_graph.Nodes[next.Name]);
                continue;
            }

            if (_state.IsKnown(next.Name) || !seen.Add(next.Name)) continue;
            var node = NodeCalled(next.Name, next.AskedBy);
            pending.Push((node.Name, next.AskedBy, true));
            foreach (var input in node.Inputs) pending.Push((input.Split(':')[0], $"node '{node.Name}'", false));
        }

        return order;
    }

    private GraphNode NodeCalled(string name, string askedBy) =>
        _graph.Nodes.TryGetValue(name, out var node)
            ? node
            : throw new ModelException($"cannot import {_graph.Path}: it has no node '{name}', asked for by {askedBy}");
}
