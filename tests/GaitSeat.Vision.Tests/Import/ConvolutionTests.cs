namespace GaitSeat.Vision.Tests.Import;

public sealed class ConvolutionTests
{
    [Fact]
    public void Conv_SamePaddingStride2_PadsRightAndBottom()
    {
        // 4 x 4 picture 0..15, 3 x 3 kernel of ones: SAME adds one row and column, at the end.
        // By hand: 0+1+2+4+5+6+8+9+10 = 45; 2+3+6+7+10+11 = 39; 8+9+10+12+13+14 = 66; 10+11+14+15 = 50.
        using var graph = new TinyGraph()
            .Floats("k", [1, 1, 1, 1, 1, 1, 1, 1, 1], 3, 3, 1, 1)
            .Node("y", "Conv2D", ["x", "k"], ("strides", new[] { 1, 2, 2, 1 }), ("padding", "SAME"), ("data_format", "NHWC"));

        var (values, shape) = graph.Run("y", [.. Enumerable.Range(0, 16).Select(i => (float)i)], [4, 4, 1]);

        Assert.Equal([1, 2, 2, 1], shape);
        Assert.Equal([45, 39, 66, 50], values);
    }

    [Theory]
    [InlineData("Conv2D", 5, 6, 3, 3, 2, 1, 1, "SAME")]
    [InlineData("Conv2D", 6, 6, 2, 3, 4, 2, 1, "SAME")]
    [InlineData("Conv2D", 7, 5, 3, 3, 2, 2, 1, "VALID")]
    [InlineData("Conv2D", 9, 8, 2, 3, 2, 1, 2, "VALID")]
    [InlineData("_FusedConv2D", 6, 5, 3, 5, 2, 2, 1, "SAME")]
    [InlineData("DepthwiseConv2dNative", 6, 6, 3, 3, 1, 2, 1, "SAME")]
    [InlineData("DepthwiseConv2dNative", 5, 7, 2, 3, 2, 1, 1, "VALID")]
    [InlineData("FusedDepthwiseConv2dNative", 6, 5, 4, 5, 1, 2, 1, "SAME")]
    public void Conv_AgainstPlainDefinition_Matches(
        string op, int rows, int columns, int channels, int k, int channelsOut, int stride, int dilation, string padding)
    {
        var x = NaiveTf.Numbers(rows * columns * channels, 1);
        var kernel = NaiveTf.Numbers(k * k * channels * channelsOut, 2);
        using var graph = new TinyGraph()
            .Floats("k", kernel, k, k, channels, channelsOut)
            .Node("y", op, ["x", "k"], ("strides", new[] { 1, stride, stride, 1 }), ("dilations", new[] { 1, dilation, dilation, 1 }), ("padding", padding));

        var (values, _) = graph.Run("y", x, [rows, columns, channels]);

        var isDepthwise = op.Contains("Depthwise", StringComparison.Ordinal);
        Near(NaiveTf.Convolve(x, (rows, columns, channels), kernel, k, channelsOut, stride, dilation, padding == "SAME", isDepthwise), values);
    }

    [Fact]
    public void FusedConv_BiasAndRelu6_AreApplied()
    {
        // 1 x 1 kernel doubling one channel into two, bias 1 and -1: x = -3, 0, 1, 4 gives 2x+1 and 2x-1, cut to 0..6.
        using var graph = new TinyGraph()
            .Floats("k", [2, 2], 1, 1, 1, 2)
            .Floats("b", [1, -1], 2)
            .Node("y", "_FusedConv2D", ["x", "k", "b"], ("strides", new[] { 1, 1, 1, 1 }), ("padding", "VALID"), ("fused_ops", new[] { "BiasAdd", "Relu6" }));

        var (values, _) = graph.Run("y", [-3, 0, 1, 4], [2, 2, 1]);

        Assert.Equal([0, 0, 1, 0, 3, 1, 6, 6], values);
    }

    [Fact]
    public void FusedConv_LeakyRelu_TakesItsSlopeFromTheNode()
    {
        using var graph = new TinyGraph()
            .Floats("k", [1], 1, 1, 1, 1)
            .Node("y", "_FusedConv2D", ["x", "k"], ("strides", new[] { 1, 1, 1, 1 }), ("padding", "VALID"), ("fused_ops", new[] { "LeakyRelu" }), ("leakyrelu_alpha", 0.25f));

        Assert.Equal([-1, 3], graph.Run("y", [-4, 3], [1, 2, 1]).Values);
    }

    [Fact]
    public void Conv_ExplicitPadding_PadsAsStated()
    {
        // One row above, two columns left: a 1 x 1 kernel of one shows the zeros.
        using var graph = new TinyGraph()
            .Floats("k", [1], 1, 1, 1, 1)
            .Node("y", "Conv2D", ["x", "k"], ("strides", new[] { 1, 1, 1, 1 }), ("padding", "EXPLICIT"), ("explicit_paddings", new[] { 0, 0, 1, 0, 2, 0, 0, 0 }));

        var (values, shape) = graph.Run("y", [5, 7], [1, 2, 1]);

        Assert.Equal([1, 2, 4, 1], shape);
        Assert.Equal([0, 0, 0, 0, 0, 0, 5, 7], values);
    }

    [Fact]
    public void Run_BatchOfThree_EqualsThreeRuns()
    {
        var x = NaiveTf.Numbers(3 * 5 * 5 * 2, 3);
        var kernel = NaiveTf.Numbers(3 * 3 * 2 * 2, 4);
        using var graph = new TinyGraph()
            .Floats("k", kernel, 3, 3, 2, 2)
            .Ints("target", [1, 18], 2)
            .Node("c", "Conv2D", ["x", "k"], ("strides", new[] { 1, 2, 2, 1 }), ("padding", "SAME"))
            .Node("y", "Reshape", ["c", "target"]);

        var (values, shape) = graph.Run("y", x, [5, 5, 2], batch: 3);

        Assert.Equal([3, 18], shape);
        Near([.. x.Chunk(50).SelectMany(one => NaiveTf.Convolve(one, (5, 5, 2), kernel, 3, 2, 2, 1, true, false))], values);
    }

    internal static void Near(float[] expected, float[] found)
    {
        Assert.Equal(expected.Length, found.Length);
        for (var i = 0; i < expected.Length; i++) Assert.Equal(expected[i], found[i], 1e-4f);
    }
}
