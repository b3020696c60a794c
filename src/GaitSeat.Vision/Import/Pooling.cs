namespace GaitSeat.Vision.Import;

internal static class Pooling
{
    public static void AddMax(GraphNode node, ImportState state) => Add("MaxPool", node, state);

    /// <summary>Padding does not count in the average, in the published graph as in ONNX's default.</summary>
    public static void AddAverage(GraphNode node, ImportState state) => Add("AveragePool", node, state);

    public static void AddMean(GraphNode node, ImportState state)
    {
        var keepsAxes = node.Bool("keep_dims");
        var layout = keepsAxes ? state.LayoutOf(node.Input(0)) : Layout.Tf;
        var rank = state.RankOf(node.Input(0));
        var axes = Array.ConvertAll(state.Constant(node.Input(1)).Ints, a => (long)Axes.Map(a, layout, rank));
        var name = state.Onnx.Node(
            "ReduceMean", [state.As(layout, node.Input(0)), state.Onnx.Longs(axes)], OnnxAttribute.Of("keepdims", keepsAxes ? 1 : 0));
        state.Define(node.Name, new Value(name, layout, keepsAxes ? rank : rank - axes.Length));
    }

    private static void Add(string op, GraphNode node, ImportState state)
    {
        Picture.RequireNhwc(node);
        var name = state.Onnx.Node(op, [state.As(Layout.Nchw, node.Input(0))],
        [
            OnnxAttribute.Of("kernel_shape", Picture.Window(node, "ksize")),
            OnnxAttribute.Of("strides", Picture.Window(node, "strides")),
            .. Picture.Padding(node),
        ]);
        state.Define(node.Name, new Value(name, Layout.Nchw, 4));
    }
}
