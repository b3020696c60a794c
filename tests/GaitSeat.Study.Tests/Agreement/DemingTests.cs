using GaitSeat.Study.Agreement;
using GaitSeat.Study.Linear;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace GaitSeat.Study.Tests.Agreement;

public sealed class DemingTests
{
    /// <summary>With equal errors the line is the first principal axis of the points.</summary>
    [Fact]
    public void EqualErrors_GiveThePrincipalAxis()
    {
        var pairs = Made(60, seed: 2, sdX: 1, sdY: 1);
        var x = Moments.Of([.. pairs.Select(p => p.First)]);
        var y = Moments.Of([.. pairs.Select(p => p.Second)]);
        var covariance = pairs.Sum(p => (p.First - x.Mean) * (p.Second - y.Mean)) / (pairs.Length - 1);
        var axis = Matrix<double>.Build.DenseOfArray(new[,] { { x.Variance, covariance }, { covariance, y.Variance } }).Evd().EigenVectors.Column(1);
        var line = DemingRegression.Of(pairs);
        Assert.Equal(axis[1] / axis[0], line.Slope.Estimate, 1e-9);
        Assert.Equal(y.Mean - line.Slope.Estimate * x.Mean, line.Intercept.Estimate, 1e-9);
    }

    /// <summary>All error in y: ordinary least squares, in the limit of a great ratio.</summary>
    [Fact]
    public void GreatRatio_GivesLeastSquares()
    {
        var pairs = Made(60, seed: 2, sdX: 1, sdY: 1);
        var ols = LeastSquaresFit.Of([.. pairs.Select(p => p.Second)], [DesignColumn.Intercept(60), new("x", [.. pairs.Select(p => p.First)])]);
        Assert.Equal(ols.Coefficients[1].Estimate, DemingRegression.Of(pairs, 1e9).Slope.Estimate, 1e-6);
    }

    [Fact]
    public void ExchangedMethods_GiveTheInverseLine()
    {
        var pairs = Made(60, seed: 2, sdX: 1, sdY: 2);
        var (line, back) = (DemingRegression.Of(pairs, 4), DemingRegression.Of([.. pairs.Select(p => new MethodPair(p.Subject, p.Second, p.First))], 0.25));
        Assert.Equal(1 / line.Slope.Estimate, back.Slope.Estimate, 1e-9);
    }

    /// <summary>Truth y = 2 + 1.1 x; the jackknife's error against the spread of 300 studies, known to 4 %.</summary>
    [Fact]
    public void Jackknife_IsTheSpreadOverStudies()
    {
        var lines = Enumerable.Range(0, 300).Select(s => DemingRegression.Of(Made(40, s, sdX: 1, sdY: 2), 4)).ToArray();
        var slopes = Moments.Of([.. lines.Select(l => l.Slope.Estimate)]);
        Assert.Equal(1.1, slopes.Mean, 4 * slopes.Sd / Math.Sqrt(300));
        Assert.InRange(lines.Average(l => l.Slope.StandardError) / slopes.Sd, 0.87, 1.13);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void RatioNotAboveZero_IsRefused(double ratio) => Assert.Throws<StudyException>(() => DemingRegression.Of(Made(10, 1, 1, 1), ratio));

    private static MethodPair[] Made(int count, int seed, double sdX, double sdY)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(i =>
        {
            var truth = Normal.Sample(random, 20, 4);
            return new MethodPair($"s{i}", truth + Normal.Sample(random, 0, sdX), 2 + 1.1 * truth + Normal.Sample(random, 0, sdY));
        })];
    }
}
