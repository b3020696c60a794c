namespace GaitSeat.Vision.Tests.Import;

/// <summary>
/// TensorFlow's definitions written down plainly, batch of one, channels last: the second opinion on the imported operators.
/// Source: the "Neural network" page of TensorFlow's API guide, SAME: out = ceil(in / stride),
/// total pad = max((out - 1) * stride + (kernel - 1) * dilation + 1 - in, 0), the smaller half before.
/// </summary>
internal static class NaiveTf
{
    public static float[] Convolve(
        float[] x, (int Rows, int Columns, int Channels) size, float[] kernel, int k, int channelsOut, int stride, int dilation, bool isSame, bool isDepthwise)
    {
        var (rows, columns, channels) = size;
        var (outRows, top) = Extent(rows, k, stride, dilation, isSame);
        var (outColumns, left) = Extent(columns, k, stride, dilation, isSame);
        var all = isDepthwise ? channels * channelsOut : channelsOut;
        var y = new float[outRows * outColumns * all];
        for (var r = 0; r < outRows; r++)
            for (var c = 0; c < outColumns; c++)
                for (var o = 0; o < all; o++)
                {
                    double sum = 0;
                    for (var i = 0; i < k; i++)
                        for (var j = 0; j < k; j++)
                            for (var ch = 0; ch < channels; ch++)
                            {
                                if (isDepthwise && ch != o / channelsOut) continue;
                                int sr = r * stride + i * dilation - top, sc = c * stride + j * dilation - left;
                                if (sr < 0 || sr >= rows || sc < 0 || sc >= columns) continue;
                                var last = isDepthwise ? o % channelsOut : o;
                                sum += x[(sr * columns + sc) * channels + ch] * kernel[((i * k + j) * channels + ch) * channelsOut + last];
                            }

                    y[(r * outColumns + c) * all + o] = (float)sum;
                }

        return y;
    }

    /// <summary>Numbers without a pattern that a wrong axis could leave alone.</summary>
    public static float[] Numbers(int count, int seed) =>
        [.. Enumerable.Range(0, count).Select(i => (((i + 1) * 7919 + seed * 104729) % 1000 - 500) / 250f)];

    private static (int Out, int Before) Extent(int size, int k, int stride, int dilation, bool isSame)
    {
        var reach = (k - 1) * dilation + 1;
        if (!isSame) return ((size - reach) / stride + 1, 0);
        var extent = (size + stride - 1) / stride;
        return (extent, Math.Max((extent - 1) * stride + reach - size, 0) / 2);
    }
}
