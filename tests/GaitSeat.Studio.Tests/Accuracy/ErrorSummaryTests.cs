using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Studio.Tests.Accuracy;

public sealed class ErrorSummaryTests
{
    /// <summary>Errors -1, 2, -3, ... 20 with a standard error of 5: bias 0.5, mean size 10.5, 19 of 20 within 19, nine within 9.8.</summary>
    [Fact]
    public void Errors_GiveTheFiguresOfTheHand()
    {
        var sum = ErrorSummary.Of(Enumerable.Range(1, 20).Select(i => Made.Error(i % 2 == 0 ? "a" : "b", i % 2 == 0 ? i : -i, se: 5, truth: 42)));

        Assert.Equal((20, 2), (sum.Count, sum.Clips));
        Assert.Equal(0.5, sum.Bias, 12);
        Assert.Equal(10.5, sum.Mae, 12);
        Assert.Equal(19, sum.P95, 12);
        Assert.Equal(45, sum.HeldPct, 12);
        Assert.Equal(9.8, sum.MedianHalfWidth, 3);
        Assert.Equal(25, sum.MaePct, 12);
        Assert.Equal(9.8 / 19, sum.Sharpness, 3);
    }

    [Theory]
    [InlineData(1.9, true)]
    [InlineData(-1.9, true)]
    [InlineData(2.0, false)]
    public void Interval_HoldsWithin196StandardErrors(double error, bool held) => Assert.Equal(held, Made.Error("a", error, se: 1).HeldByInterval);

    [Fact]
    public void UnknownStandardError_HoldsNothing() => Assert.False(Made.Error("a", 0, se: double.NaN).HeldByInterval);

    [Fact]
    public void NoErrors_AreNotZero()
    {
        var sum = ErrorSummary.Of([]);

        Assert.Equal(0, sum.Count);
        Assert.True(double.IsNaN(sum.Mae) && double.IsNaN(sum.HeldPct) && double.IsNaN(sum.Bias));
    }
}
