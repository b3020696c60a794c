namespace GaitSeat.Vision.Import;

internal static class Reordering
{
    /// <summary>A transpose between the two layouts only renames; what is left is done.</summary>
    public static void AddTranspose(GraphNode node, ImportState state)
    {
        var permutation = state.Constant(node.Input(1)).Ints;
        var input = state.Value(node.Input(0));
        state.Define(node.Name, input.Layout switch
        {
            Layout.Nchw when permutation.SequenceEqual(Axes.ToNchw) => input with { Layout = Layout.Tf },
            Layout.Tf when permutation.SequenceEqual(Axes.ToTf) => input with { Layout = Layout.Nchw },
            _ => new Value(
                state.Onnx.Node("Transpose", [state.As(Layout.Tf, node.Input(0))], OnnxAttribute.Of("perm", permutation)),
                Layout.Tf,
                permutation.Length),
        });
    }

    /// <summary>The published target has the batch as 1 or -1 in front; ONNX's 0 keeps whatever it is.</summary>
    public static void AddReshape(GraphNode node, ImportState state)
    {
        var target = Array.ConvertAll(state.Constant(node.Input(1)).Ints, d => (long)d);
        if (target.Length == 0 || target[0] is not (1 or -1))
        {
            throw NodeException.NotSupported("reshape to", $"[{string.Join(',', target)}]", "a batch axis of 1 or -1 in front");
        }

        target[0] = 0;
        var name = state.Onnx.Node("Reshape", [state.As(Layout.Tf, node.Input(0)), state.Onnx.Longs(target)]);
        state.Define(node.Name, new Value(name, Layout.Tf, target.Length));
    }

    public static void AddIdentity(GraphNode node, ImportState state) => state.Define(node.Name, state.Value(node.Input(0)));
}
