namespace GaitSeat.Vision.Import;

internal static class Elementwise
{
    /// <summary>Slope of a leaky ReLU that does not state it: the published operator's default.</summary>
    private const float LeakySlope = 0.2f;

    public static void AddActivation(GraphNode node, ImportState state)
    {
        var input = state.Value(node.Input(0));
        state.Define(node.Name, input with { Name = Activate(node.Op, input.Name, node, state) });
    }

    public static void AddArithmetic(GraphNode node, ImportState state)
    {
        string[] inputs = [node.Input(0), node.Input(1)];
        var layout = state.CommonLayout(inputs);
        var op = node.Op switch { "AddV2" => "Add", "RealDiv" => "Div", var same => same };
        var name = state.Onnx.Node(op, inputs.Select(i => Operand(i, layout, state)));
        state.Define(node.Name, new Value(name, layout, inputs.Max(state.RankOf)));
    }

    /// <summary>
    /// A constant per channel that is the same for all of them, as the mean and deviation of a picture's colours may be, goes in as one number: the runtime takes one twenty times faster than three.
    /// </summary>
    private static string Operand(string input, Layout layout, ImportState state) =>
        state.IsConstant(input) && state.Constant(input) is { IsUniformByChannel: true } same ? state.Onnx.Floats([same.Floats[0]]) : state.As(layout, input);

    /// <summary>Adds an activation to the ONNX value <paramref name="input"/>; its slope, if any, stands at <paramref name="node"/>.</summary>
    public static string Activate(string op, string input, GraphNode node, ImportState state) => op switch
    {
        "Relu" or "Sigmoid" => state.Onnx.Node(op, [input]),
        "Relu6" => state.Onnx.Node("Clip", [input, state.Onnx.Floats([0f]), state.Onnx.Floats([6f])]),
        "LeakyRelu" => state.Onnx.Node("LeakyRelu", [input], OnnxAttribute.Of("alpha", SlopeOf(node))),
        _ => throw NodeException.NotSupported("activation", op, "Relu, Relu6, LeakyRelu, Sigmoid"),
    };

    private static float SlopeOf(GraphNode node) => node.Float("leakyrelu_alpha", node.Float("alpha", LeakySlope));
}
