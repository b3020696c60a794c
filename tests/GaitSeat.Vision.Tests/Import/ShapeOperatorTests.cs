namespace GaitSeat.Vision.Tests.Import;

public sealed class ShapeOperatorTests
{
    // 2 x 2 picture of three channels; value = 100 row + 10 column + channel.
    private static readonly float[] Picture = [0, 1, 2, 10, 11, 12, 100, 101, 102, 110, 111, 112];

    [Theory]
    [InlineData(true, false, 4, new[] { 0f, 0.25f, 0.75f, 1f })] // half_pixel: (i + 0.5) / 2 - 0.5, held at the edges
    [InlineData(false, true, 3, new[] { 0f, 0.5f, 1f })] // align_corners: i / (3 - 1)
    [InlineData(false, false, 4, new[] { 0f, 0.5f, 1f, 1f })] // asymmetric: i / 2, held at the edge
    public void ResizeBilinear_TwoColumns_Interpolates(bool halfPixel, bool alignCorners, int columns, float[] expected)
    {
        using var graph = new TinyGraph()
            .Copy("c", "x", 1)
            .Ints("size", [1, columns], 2)
            .Node("y", "ResizeBilinear", ["c", "size"], ("half_pixel_centers", halfPixel), ("align_corners", alignCorners));

        var (values, shape) = graph.Run("y", [0, 1], [1, 2, 1]);

        Assert.Equal([1, 1, columns, 1], shape);
        ConvolutionTests.Near(expected, values);
    }

    [Fact]
    public void DepthToSpace_TwoChannelsOut_TakesTheBlockFromTheHighPart()
    {
        // out[i, j, c] = in[(2i + j) * 2 + c] (TensorFlow, depth_to_space).
        using var graph = new TinyGraph().Node("y", "DepthToSpace", ["x"], ("block_size", 2));

        var (values, shape) = graph.Run("y", [0, 1, 2, 3, 4, 5, 6, 7, 10, 11, 12, 13, 14, 15, 16, 17], [1, 2, 8]);

        Assert.Equal([1, 2, 4, 2], shape);
        Assert.Equal([0, 1, 2, 3, 10, 11, 12, 13, 4, 5, 6, 7, 14, 15, 16, 17], values);
    }

    [Theory]
    [InlineData(3, new[] { 1, 2, 2, 6 }, new[] { 0f, 1, 2, 0, 1, 2, 10, 11, 12, 10, 11, 12 })]
    [InlineData(-1, new[] { 1, 2, 2, 6 }, new[] { 0f, 1, 2, 0, 1, 2, 10, 11, 12, 10, 11, 12 })]
    [InlineData(2, new[] { 1, 2, 4, 3 }, new[] { 0f, 1, 2, 10, 11, 12, 0, 1, 2, 10, 11, 12 })]
    [InlineData(1, new[] { 1, 4, 2, 3 }, new[] { 0f, 1, 2, 10, 11, 12, 100, 101, 102, 110, 111, 112 })]
    [InlineData(-3, new[] { 1, 4, 2, 3 }, new[] { 0f, 1, 2, 10, 11, 12, 100, 101, 102, 110, 111, 112 })]
    public void Concat_ChannelsFirstWithChannelsLast_JoinsThePublishedAxis(int axis, int[] expectedShape, float[] expectedStart)
    {
        using var graph = new TinyGraph()
            .Copy("c", "x", 3)
            .Ints("axis", [axis])
            .Node("y", "ConcatV2", ["c", "x", "axis"]);

        var (values, shape) = graph.Run("y", Picture, [2, 2, 3]);

        Assert.Equal(expectedShape, shape);
        Assert.Equal(expectedStart, values.Take(12));
    }

    [Theory]
    [InlineData(true, 3, new[] { 2, 1 }, "y:1", new[] { 2f, 12, 102, 112 })]
    [InlineData(true, -1, new[] { 1, 2 }, "y", new[] { 0f, 10, 100, 110 })]
    [InlineData(false, 3, new[] { 2, 1 }, "y:0", new[] { 0f, 1, 10, 11, 100, 101, 110, 111 })]
    [InlineData(true, 1, new[] { 1, 1 }, "y:1", new[] { 100f, 101, 102, 110, 111, 112 })]
    [InlineData(true, 2, new[] { 1, 1 }, "y:1", new[] { 10f, 11, 12, 110, 111, 112 })]
    public void Split_AnyAxis_GivesThePartAsked(bool isChannelsFirst, int axis, int[] sizes, string output, float[] expected)
    {
        using var graph = new TinyGraph()
            .Copy("c", "x", 3)
            .Ints("sizes", sizes, 2)
            .Ints("axis", [axis])
            .Node("y", "SplitV", [isChannelsFirst ? "c" : "x", "sizes", "axis"])
            .Node("out", "Identity", [output]);

        Assert.Equal(expected, graph.Run("out", Picture, [2, 2, 3]).Values);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Pad_RowsColumnsAndChannels_PadsThePublishedAxes(bool isChannelsFirst)
    {
        // One row above, one column to the right, one channel after; value 9.
        using var graph = new TinyGraph()
            .Copy("c", "x", 1)
            .Ints("pads", [0, 0, 1, 0, 0, 1, 0, 1], 4, 2)
            .Floats("nine", [9])
            .Node("y", "PadV2", [isChannelsFirst ? "c" : "x", "pads", "nine"]);

        var (values, shape) = graph.Run("y", [1, 2], [1, 2, 1]);

        Assert.Equal([1, 2, 3, 2], shape);
        Assert.Equal([9, 9, 9, 9, 9, 9, 1, 9, 2, 9, 9, 9], values);
    }

    [Fact]
    public void Pad_FromSparseConstant_IsWorkedOutWhileImporting()
    {
        // Zeros of shape [4, 2] but for a 1 at (1, 0): one row above.
        using var graph = new TinyGraph()
            .Ints("where", [1, 0], 1, 2)
            .Ints("shape", [4, 2], 2)
            .Ints("one", [1], 1)
            .Ints("zero", [0])
            .Node("pads", "SparseToDense", ["where", "shape", "one", "zero"])
            .Node("y", "Pad", ["x", "pads"]);

        Assert.Equal([0, 0, 5, 6], graph.Run("y", [5, 6], [1, 2, 1]).Values);
    }

    [Theory]
    [InlineData(true, new[] { 0, 3, 1, 2 }, new[] { 0f, 10, 100, 110, 1, 11 })]
    [InlineData(false, new[] { 0, 3, 1, 2 }, new[] { 0f, 10, 100, 110, 1, 11 })]
    [InlineData(true, new[] { 0, 2, 1, 3 }, new[] { 0f, 1, 2, 100, 101, 102 })]
    public void Transpose_AfterEitherLayout_IsThePublishedOne(bool isChannelsFirst, int[] permutation, float[] expectedStart)
    {
        using var graph = new TinyGraph()
            .Copy("c", "x", 3)
            .Ints("perm", permutation, 4)
            .Node("y", "Transpose", [isChannelsFirst ? "c" : "x", "perm"]);

        Assert.Equal(expectedStart, graph.Run("y", Picture, [2, 2, 3]).Values.Take(6));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Mean_OverRowsAndColumns_LeavesChannels(bool keepsAxes)
    {
        using var graph = new TinyGraph()
            .Copy("c", "x", 3)
            .Ints("axes", [1, 2], 2)
            .Node("y", "Mean", ["c", "axes"], ("keep_dims", keepsAxes));

        var (values, shape) = graph.Run("y", Picture, [2, 2, 3]);

        Assert.Equal(keepsAxes ? [1, 1, 1, 3] : [1, 3], shape);
        Assert.Equal([55, 56, 57], values);
    }
}
