using GaitSeat.Study.Linear;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Tests.Linear;

public sealed class FisherQuantileTests
{
    /// <summary>Snedecor's table, upper 5 %.</summary>
    [Theory]
    [InlineData(1, 1, 161.4)]
    [InlineData(2, 10, 4.10)]
    [InlineData(5, 5, 5.05)]
    [InlineData(10, 20, 2.35)]
    [InlineData(120, 120, 1.35)]
    public void Quantile_IsThatOfTheTable(double df1, double df2, double f) => Assert.Equal(f, FisherQuantile.Of(df1, df2, 0.95), 5e-3 * Math.Max(1, f / 10));

    [Theory]
    [InlineData(499, 1.0003, 0.975)]
    [InlineData(499, 499, 0.975)]
    [InlineData(3.2, 499, 0.025)]
    [InlineData(499, 250_000, 0.975)]
    public void Quantile_UndoesTheDistribution(double df1, double df2, double probability) =>
        Assert.Equal(probability, FisherSnedecor.CDF(df1, df2, FisherQuantile.Of(df1, df2, probability)), 1e-9);
}
