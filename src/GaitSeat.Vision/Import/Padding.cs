namespace GaitSeat.Vision.Import;

internal static class Padding
{
    /// <summary>The pads come as rows of (before, after), one an axis; ONNX wants all befores, then all afters.</summary>
    public static void Add(GraphNode node, ImportState state)
    {
        var input = state.Value(node.Input(0));
        var pads = state.Constant(node.Input(1)).Ints;
        if (pads.Length != 2 * input.Rank) throw new NodeException($"has {pads.Length} pads for rank {input.Rank}; expected {2 * input.Rank}");
        var turned = new long[pads.Length];
        for (var axis = 0; axis < input.Rank; axis++)
        {
            var at = Axes.Map(axis, input.Layout, input.Rank);
            turned[at] = pads[2 * axis];
            turned[input.Rank + at] = pads[2 * axis + 1];
        }

        List<string> inputs = [input.Name, state.Onnx.Longs(turned)];
        if (node.Inputs.Length > 2) inputs.Add(state.Onnx.Floats(state.Constant(node.Input(2)).Floats));
        state.Define(node.Name, input with { Name = state.Onnx.Node("Pad", inputs) });
    }
}
