namespace GaitSeat.Vision.Import;

/// <summary>Convolutions, plain and by channel, with what was fused into them.</summary>
internal static class Convolution
{
    /// <summary>Kernel in: rows, columns, channels in, channels out. ONNX: out, in, rows, columns.</summary>
    public static void Add(GraphNode node, ImportState state)
    {
        var kernel = state.Constant(node.Input(1));
        Add(node, state, kernel.Permuted([3, 2, 0, 1]), groups: 1);
    }

    /// <summary>Kernel in: rows, columns, channels, multiplier. ONNX: channels times multiplier, 1, rows, columns, one group a channel.</summary>
    public static void AddDepthwise(GraphNode node, ImportState state)
    {
        var kernel = state.Constant(node.Input(1));
        var channels = kernel.Shape[2];
        int[] shape = [channels * kernel.Shape[3], 1, kernel.Shape[0], kernel.Shape[1]];
        Add(node, state, kernel.Permuted([2, 3, 0, 1]).Reshaped(shape), channels);
    }

    private static void Add(GraphNode node, ImportState state, Constant kernel, int groups)
    {
        Picture.RequireNhwc(node);
        int[] dilations = Picture.Window(node, "dilations");
        if (dilations is not [1, 1] && node.Text("padding", "") == "SAME")
        {
            // The runtime refuses the pair only when it runs.
            throw NodeException.NotSupported("SAME padding with dilations", $"[{string.Join(',', dilations)}]", "1, or padding VALID or EXPLICIT");
        }

        var fused = node.Texts("fused_ops");
        List<string> inputs = [state.As(Layout.Nchw, node.Input(0)), state.Onnx.Floats(kernel.Floats, kernel.Shape)];
        if (fused.Contains("BiasAdd"))
        {
            var bias = state.Constant(node.Input(2));
            inputs.Add(state.Onnx.Floats(bias.Floats, bias.Count));
        }

        var name = state.Onnx.Node("Conv", inputs,
        [
            OnnxAttribute.Of("kernel_shape", kernel.Shape[2..]),
            OnnxAttribute.Of("strides", Picture.Window(node, "strides")),
            OnnxAttribute.Of("dilations", dilations),
            OnnxAttribute.Of("group", groups),
            .. Picture.Padding(node),
        ]);
        foreach (var op in fused.Where(f => f != "BiasAdd")) name = Elementwise.Activate(op, name, node, state);
        state.Define(node.Name, new Value(name, Layout.Nchw, 4));
    }
}
