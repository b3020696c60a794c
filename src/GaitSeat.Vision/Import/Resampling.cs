namespace GaitSeat.Vision.Import;

internal static class Resampling
{
    /// <summary>
    /// Only rows and columns are named (<c>axes</c>), for the batch is free. OnnxRuntime 1.31 refuses to load such a node if it comes
    /// straight after a Transpose, that is on the input itself or on a value in the published layout.
    /// </summary>
    public static void AddResizeBilinear(GraphNode node, ImportState state)
    {
        var size = state.Constant(node.Input(1)).Ints;
        var mode = node.Bool("align_corners") ? "align_corners" : node.Bool("half_pixel_centers") ? "half_pixel" : "asymmetric";
        var name = state.Onnx.Node(
            "Resize",
            [state.As(Layout.Nchw, node.Input(0)), "", "", state.Onnx.Longs(size[0], size[1])],
            OnnxAttribute.Of("mode", "linear"),
            OnnxAttribute.Of("coordinate_transformation_mode", mode),
            OnnxAttribute.Of("axes", Axes.Spatial));
        state.Define(node.Name, new Value(name, Layout.Nchw, 4));
    }

    /// <summary>Depth-column-row: the channel's high part says where in the block, as the published graph has it.</summary>
    public static void AddDepthToSpace(GraphNode node, ImportState state)
    {
        Picture.RequireNhwc(node);
        var block = node.Int("block_size", 0);
        if (block < 2) throw NodeException.NotSupported("block_size", $"{block}", "2 and more");
        var name = state.Onnx.Node(
            "DepthToSpace",
            [state.As(Layout.Nchw, node.Input(0))],
            OnnxAttribute.Of("blocksize", block),
            OnnxAttribute.Of("mode", "DCR"));
        state.Define(node.Name, new Value(name, Layout.Nchw, 4));
    }
}
