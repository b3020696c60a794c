namespace GaitSeat.Vision.Import;

/// <summary>Adds one node of a published graph to the import.</summary>
internal delegate void AddOperator(GraphNode node, ImportState state);

/// <summary>The operators we can import, by their name in the published graph. To add one: a method, and a line here.</summary>
internal static class OperatorTable
{
    public static IReadOnlyDictionary<string, AddOperator> All { get; } = new Dictionary<string, AddOperator>
    {
        ["Conv2D"] = Convolution.Add,
        ["_FusedConv2D"] = Convolution.Add,
        ["DepthwiseConv2dNative"] = Convolution.AddDepthwise,
        ["FusedDepthwiseConv2dNative"] = Convolution.AddDepthwise,
        ["MaxPool"] = Pooling.AddMax,
        ["AvgPool"] = Pooling.AddAverage,
        ["Mean"] = Pooling.AddMean,
        ["ResizeBilinear"] = Resampling.AddResizeBilinear,
        ["DepthToSpace"] = Resampling.AddDepthToSpace,
        ["Relu"] = Elementwise.AddActivation,
        ["Relu6"] = Elementwise.AddActivation,
        ["LeakyRelu"] = Elementwise.AddActivation,
        ["Sigmoid"] = Elementwise.AddActivation,
        ["Add"] = Elementwise.AddArithmetic,
        ["AddV2"] = Elementwise.AddArithmetic,
        ["Sub"] = Elementwise.AddArithmetic,
        ["Mul"] = Elementwise.AddArithmetic,
        ["RealDiv"] = Elementwise.AddArithmetic,
        ["Pad"] = Padding.Add,
        ["PadV2"] = Padding.Add,
        ["ConcatV2"] = Joining.AddConcat,
        ["SplitV"] = Joining.AddSplit,
        ["Transpose"] = Reordering.AddTranspose,
        ["Reshape"] = Reordering.AddReshape,
        ["Identity"] = Reordering.AddIdentity,
    };
}
