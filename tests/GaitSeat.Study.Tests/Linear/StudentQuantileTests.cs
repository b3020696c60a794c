using GaitSeat.Study.Linear;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Tests.Linear;

public sealed class StudentQuantileTests
{
    /// <summary>Fisher and Yates' table, two-sided 5 %.</summary>
    [Theory]
    [InlineData(1, 12.706)]
    [InlineData(2, 4.303)]
    [InlineData(5, 2.571)]
    [InlineData(10, 2.228)]
    [InlineData(30, 2.042)]
    [InlineData(1e9, 1.960)]
    public void Quantile_IsThatOfTheTable(double df, double t) => Assert.Equal(t, StudentQuantile.TwoSided(df, 0.95), 5e-4);

    [Theory]
    [InlineData(3.7)]
    [InlineData(0.9)]
    public void Quantile_UndoesTheDistribution(double df) => Assert.Equal(0.025, StudentT.CDF(0, 1, df, -StudentQuantile.TwoSided(df, 0.95)), 1e-10);

    /// <summary>A handful of riders: wide beyond use, and said so rather than thrown.</summary>
    [Fact]
    public void HardlyAnyDegreesOfFreedom_GiveAVastInterval()
    {
        Assert.True(StudentQuantile.TwoSided(0.1, 0.95) > 1e9);
        Assert.Equal(double.PositiveInfinity, StudentQuantile.TwoSided(1e-4, 0.95));
        Assert.Equal(double.PositiveInfinity, StudentQuantile.TwoSided(double.NaN, 0.95));
    }
}
