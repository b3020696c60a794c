namespace GaitSeat.Vision.Import;

internal static class Joining
{
    /// <summary>The last input is the axis.</summary>
    public static void AddConcat(GraphNode node, ImportState state)
    {
        var parts = node.Inputs[..^1];
        if (parts.FirstOrDefault(state.IsConstant) is { } constant)
        {
            throw NodeException.NotSupported("a constant part", $"('{constant}')", "parts that all have the batch axis");
        }

        var layout = state.CommonLayout(parts);
        var rank = state.RankOf(node.Input(0));
        var axis = Axes.Map(state.Constant(node.Inputs[^1]).Ints[0], layout, rank);
        var name = state.Onnx.Node("Concat", parts.Select(p => state.As(layout, p)), OnnxAttribute.Of("axis", axis));
        state.Define(node.Name, new Value(name, layout, rank));
    }

    /// <summary>Inputs: value, sizes, axis. Output i of the node is called <c>node:i</c>, the first one <c>node</c>.</summary>
    public static void AddSplit(GraphNode node, ImportState state)
    {
        var input = state.Value(node.Input(0));
        var sizes = state.Constant(node.Input(1)).Ints;
        if (sizes.Any(s => s < 0)) throw NodeException.NotSupported("sizes", $"[{string.Join(',', sizes)}]", "sizes that are all stated");
        var axis = Axes.Map(state.Constant(node.Input(2)).Ints[0], input.Layout, input.Rank);
        var names = Array.ConvertAll(sizes, _ => state.Onnx.NewName());
        state.Onnx.Node(
            "Split", [input.Name, state.Onnx.Longs(Array.ConvertAll(sizes, s => (long)s))], names, OnnxAttribute.Of("axis", axis));
        for (var i = 0; i < names.Length; i++) state.Define(i == 0 ? node.Name : $"{node.Name}:{i}", input with { Name = names[i] });
    }
}
