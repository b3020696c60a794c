namespace GaitSeat.Vision.Tests.Import;

public sealed class ElementwiseTests
{
    [Theory]
    [InlineData("Relu", new[] { 0f, 0, 2, 8 })]
    [InlineData("Relu6", new[] { 0f, 0, 2, 6 })]
    [InlineData("LeakyRelu", new[] { -0.5f, 0, 2, 8 })]
    [InlineData("Sigmoid", new[] { 0.0066928509f, 0.5f, 0.88079708f, 0.99966465f })] // 1 / (1 + exp(-x))
    public void Activation_OnFourNumbers_IsAsDefined(string op, float[] expected)
    {
        using var graph = new TinyGraph().Node("y", op, ["x"], ("alpha", 0.1f));

        ConvolutionTests.Near(expected, graph.Run("y", [-5, 0, 2, 8], [4]).Values);
    }

    [Theory]
    [InlineData("AddV2", new[] { 11f, 22, 13, 24 })]
    [InlineData("Sub", new[] { -9f, -18, -7, -16 })]
    [InlineData("Mul", new[] { 10f, 40, 30, 80 })]
    [InlineData("RealDiv", new[] { 0.1f, 0.1f, 0.3f, 0.2f })]
    public void Arithmetic_ChannelsFirstWithAConstantPerChannel_LinesUpWithChannels(string op, float[] expected)
    {
        // Two pixels of two channels; the constant 10, 20 belongs to the channels.
        using var graph = new TinyGraph()
            .Copy("c", "x", 2)
            .Floats("k", [10, 20], 2)
            .Node("y", op, ["c", "k"]);

        ConvolutionTests.Near(expected, graph.Run("y", [1, 2, 3, 4], [1, 2, 2]).Values);
    }

    [Theory]
    [InlineData(1, 1, 1, 2)]
    [InlineData(2)]
    public void Arithmetic_TheSameConstantForAllChannels_IsTakenOffEachOfThem(params int[] shape)
    {
        using var graph = new TinyGraph().Floats("k", [10, 10], shape).Node("y", "Sub", ["x", "k"]);

        Assert.Equal([-9, -8, -7, -6], graph.Run("y", [1, 2, 3, 4], [1, 2, 2]).Values);
    }

    /// <summary>The constant has two columns and the picture one: it is not one of channels.</summary>
    [Fact]
    public void Arithmetic_TheSameConstantForAllColumns_WidensThePicture()
    {
        using var graph = new TinyGraph().Floats("k", [10, 10], 2, 1).Node("y", "AddV2", ["x", "k"]);

        Assert.Equal([11, 11, 12, 12], graph.Run("y", [1, 2], [2, 1, 1]).Values);
    }

    [Fact]
    public void Arithmetic_ChannelsFirstWithAConstantPerColumnAndChannel_LinesUpAtTheEnd()
    {
        using var graph = new TinyGraph()
            .Copy("c", "x", 2)
            .Floats("k", [10, 20, 30, 40], 2, 2)
            .Node("y", "AddV2", ["k", "c"]);

        Assert.Equal([11, 22, 33, 44, 15, 26, 37, 48], graph.Run("y", [1, 2, 3, 4, 5, 6, 7, 8], [2, 2, 2]).Values);
    }

    [Theory]
    [InlineData("MaxPool", new[] { 5f, 6, 8, 9 })]
    [InlineData("AvgPool", new[] { 3f, 4.5f, 7.5f, 9f })] // the padding does not count
    public void Pool_SamePaddingStride2_CountsOnlyThePicture(string op, float[] expected)
    {
        // 3 x 3 picture 1..9, window 2, stride 2: windows {1,2,4,5}, {3,6}, {7,8}, {9}.
        using var graph = new TinyGraph()
            .Node("y", op, ["x"], ("ksize", new[] { 1, 2, 2, 1 }), ("strides", new[] { 1, 2, 2, 1 }), ("padding", "SAME"));

        Assert.Equal(expected, graph.Run("y", [1, 2, 3, 4, 5, 6, 7, 8, 9], [3, 3, 1]).Values);
    }
}
