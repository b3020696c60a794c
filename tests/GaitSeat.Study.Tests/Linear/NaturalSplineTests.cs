using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Tests.Linear;

public sealed class NaturalSplineTests
{
    private static readonly NaturalSpline Spline = new([0, 1, 3, 7]);

    [Theory]
    [InlineData(-5)]
    [InlineData(9)]
    public void BeyondTheOuterKnots_EveryColumnIsStraight(double x)
    {
        for (var k = 0; k < Spline.Count; k++)
            Assert.Equal(0, Spline.Row(x - 1)[k] - 2 * Spline.Row(x)[k] + Spline.Row(x + 1)[k], 1e-9);
    }

    /// <summary>Value, slope and curvature do not jump at a knot; the third derivative does.</summary>
    [Fact]
    public void AtAnInnerKnot_CurvatureIsContinuous()
    {
        const double h = 1e-3;
        double Curvature(double x) => (Spline.Row(x - h)[1] - 2 * Spline.Row(x)[1] + Spline.Row(x + h)[1]) / (h * h);
        Assert.Equal(Curvature(1 - 2 * h), Curvature(1 + 2 * h), 0.05);
        Assert.True(Math.Abs(Curvature(1.5) - Curvature(0.5)) > 0.01);
    }

    [Fact]
    public void Columns_AreNotCollinear()
    {
        double[] x = [.. Enumerable.Range(0, 80).Select(i => i / 10.0)];
        var columns = Enumerable.Range(0, Spline.Count).Select(k => new DesignColumn($"s{k}", [.. x.Select(v => Spline.Row(v)[k])]));
        Assert.Equal(4, LeastSquaresFit.Of([.. x.Select(Math.Sin)], [DesignColumn.Intercept(80), .. columns]).Coefficients.Count);
    }

    /// <summary>Type 7 quantiles (the default of R) of 1 to 8 at .25, .5, .75 are 2.75, 4.5, 6.25.</summary>
    [Fact]
    public void KnotsAtQuantiles_AreOfType7()
    {
        var knots = NaturalSpline.AtQuantiles([1, 2, 3, 4, 5, 6, 7, 8], 3).Knots;
        Assert.Equal(4.5, knots[1], 1e-12);
        Assert.Equal(1.35, knots[0], 1e-12);
    }

    [Fact]
    public void TooFewDifferentValues_AreRefused() => Assert.Contains(
        "too few different values", Assert.Throws<ArgumentException>(() => NaturalSpline.AtQuantiles([1, 1, 1, 1, 2], 4)).Message, StringComparison.Ordinal);
}
