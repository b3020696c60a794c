namespace GaitSeat.Studio.Tests;

public sealed class FourTexelsTests
{
    [Fact]
    public void PixelsAreTheWeighedMeanOfFourTexels_Rounded()
    {
        const int Columns = 9, Rows = 7, Count = 500, One = FourTexels.One;
        var noise = new SeededNoise(seed: 4, stream: 1);
        int Draw(int endExcl) => (int)(noise.Next() % (ulong)endExcl);
        var texels = Enumerable.Range(0, FourTexels.TexelBytes * Columns * Rows).Select(_ => (byte)Draw(256)).ToArray();
        texels.AsSpan(0, texels.Length / 2).Fill(255);
        int[] at = [.. Enumerable.Range(0, Count).Select(_ => FourTexels.TexelBytes * (Draw(Rows - 1) * Columns + Draw(Columns - 1)))];
        int[] right = [0, One, .. Enumerable.Range(2, Count - 2).Select(_ => Draw(One + 1))];
        int[] down = [One, 0, .. Enumerable.Range(2, Count - 2).Select(_ => Draw(One + 1))];
        var target = new byte[3 * Count];
        FourTexels.BlendRow(texels, at, FourTexels.TexelBytes * Columns, right, down, target);
        for (var i = 0; i < target.Length; i++)
        {
            var (pixel, below) = (i / 3, FourTexels.TexelBytes * Columns);
            var first = at[pixel] + i % 3;
            double Row(int from) => texels[from] * (One - right[pixel]) + texels[from + FourTexels.TexelBytes] * right[pixel];
            var mean = (Row(first) * (One - down[pixel]) + Row(first + below) * down[pixel]) / (One * One);
            Assert.Equal((int)Math.Floor(mean + 0.5), target[i]);
        }
    }
}
