using GaitSeat.Footage.Pictures;
using GaitSeat.Model;

namespace GaitSeat.Footage.Tests.Pictures;

public sealed class HeadBlurTests
{
    private static readonly BoxPx Head = new(300, 40, 40, 40);

    [Fact]
    public void Head_LosesItsDetailAndNothingElseChanges()
    {
        using var frame = Scenes.Noise();
        var before = frame.Rgb.ToArray();
        var variance = Differences.Variance(frame, Head);
        HeadBlur.Apply(frame, [Head]);
        Assert.True(Differences.Variance(frame, Head) < variance / 50);
        Assert.Equal(0, Differences.Outside(frame, before, Head));
        Assert.True(Differences.Count(frame, before, Head) > 0.95 * Head.Area);
    }

    /// <summary>Two heads that share nothing but the mean colour of their 4 x 4 cells come out the same to the last bit, so that nothing else of them is left to be won back.</summary>
    [Fact]
    public void TwoHeadsWithTheSameCellMeans_SameBytes()
    {
        const int Cell = 10;
        using var one = Scenes.Noise(seed: 1);
        using var other = Scenes.Noise(seed: 1);

        // Turn the pixels of every cell about: another face, the same mean.
        for (var cell = 0; cell < HeadBlur.CellsAcross * HeadBlur.CellsAcross; cell++)
        {
            var (x0, y0) = ((int)Head.X + cell % HeadBlur.CellsAcross * Cell, (int)Head.Y + cell / HeadBlur.CellsAcross * Cell);
            for (var i = 0; i < Cell * Cell; i++)
            {
                var from = ((y0 + i / Cell) * one.WidthPx + x0 + i % Cell) * 3;
                var to = ((y0 + (Cell - 1 - i / Cell)) * one.WidthPx + x0 + (i * 7 + 3) % Cell) * 3;
                one.Rgb.Slice(from, 3).CopyTo(other.Rgb.Slice(to, 3));
            }
        }

        Assert.False(one.Rgb.SequenceEqual(other.Rgb));
        HeadBlur.Apply(one, [Head]);
        HeadBlur.Apply(other, [Head]);
        Assert.True(one.Rgb.SequenceEqual(other.Rgb));
    }

    [Theory]
    [InlineData(-20, -20, 40, 40)]
    [InlineData(620, 340, 100, 100)]
    [InlineData(0, 0, 640, 360)]
    [InlineData(10.5, 10.5, 0.2, 0.2)]
    [InlineData(100, 100, 3, 2)]
    public void BoxAtOrBeyondTheEdge_BlurredWithinThePicture(double x, double y, double width, double height)
    {
        using var frame = Scenes.Noise();
        var before = frame.Rgb.ToArray();
        var box = new BoxPx(Math.Floor(x), Math.Floor(y), Math.Ceiling(width + 1), Math.Ceiling(height + 1));
        HeadBlur.Apply(frame, [new(x, y, width, height)]);
        Assert.Equal(0, Differences.Outside(frame, before, box));
    }

    [Theory]
    [InlineData(-50, 0, 40, 40)]
    [InlineData(700, 10, 40, 40)]
    [InlineData(double.NaN, 10, 40, 40)]
    public void BoxOutsideThePicture_NothingChanges(double x, double y, double width, double height)
    {
        using var frame = Scenes.Noise();
        var before = frame.Rgb.ToArray();
        HeadBlur.Apply(frame, [new(x, y, width, height)]);
        Assert.True(frame.Rgb.SequenceEqual(before));
    }
}
