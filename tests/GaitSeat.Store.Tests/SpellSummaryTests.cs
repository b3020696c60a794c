using CsCheck;
using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class SpellSummaryTests
{
    /// <summary>Worked by hand: 2, 4, 4, 4, 5, 5, 7, 9 have mean 5 and squares 32, so the sample SD is sqrt(32 / 7).</summary>
    [Fact]
    public void KnownValues_GiveKnownSpread()
    {
        var spread = SpellSummary.SpreadOf([2, 4, 4, 4, 5, 5, 7, 9]);
        Assert.Equal(5, spread.Mean);
        Assert.Equal(Math.Sqrt(32.0 / 7), spread.Sd, 12);
        Assert.Equal(20 * Math.Sqrt(32.0 / 7), spread.CvPct, 12);
    }

    [Fact]
    public void NoValue_IsMissing() => Assert.Equal(new(double.NaN, double.NaN, double.NaN), SpellSummary.SpreadOf([]));

    [Fact]
    public void OneValue_HasAMeanAndNoSpread() => Assert.Equal(new(3, double.NaN, double.NaN), SpellSummary.SpreadOf([3]));

    [Fact]
    public void MeanZero_HasNoCoefficientOfVariation() => Assert.Equal(double.NaN, SpellSummary.SpreadOf([-1, 1]).CvPct);

    [Fact]
    public void NegativeMean_HasAPositiveCoefficientOfVariation() => Assert.True(SpellSummary.SpreadOf([-9, -11]).CvPct > 0);

    [Fact]
    public void MissingValues_ArePassedOverEachMeasureByItself()
    {
        var summary = SpellSummary.Of([Made.Stride(1, 70, 48), Made.Stride(2, 74, 50), Made.Stride(4, 72, double.NaN)]);
        Assert.Equal(49, summary[StrideMeasure.ThighAngleSit].Mean, 12);
        Assert.Equal(0.72, summary[StrideMeasure.StrideDuration].Mean, 12);
        Assert.True(double.IsNaN(summary[StrideMeasure.RiseHeightCm].Mean));
    }

    /// <summary>Moving all values moves the mean and leaves the deviation; turning their sign turns the mean.</summary>
    [Fact]
    public void ShiftAndSign_ObeyTheirLaws() =>
        Gen.Select(Gen.Double[-100, 100].Array[2, 30], Gen.Double[-50, 50]).Sample(
            (values, by) =>
            {
                var plain = SpellSummary.SpreadOf(values);
                var moved = SpellSummary.SpreadOf([.. values.Select(v => v + by)]);
                var turned = SpellSummary.SpreadOf([.. values.Select(v => -v)]);
                Assert.Equal(plain.Mean + by, moved.Mean, 1e-9);
                Assert.Equal(plain.Sd, moved.Sd, 1e-9);
                Assert.Equal(-plain.Mean, turned.Mean, 1e-9);
                Assert.Equal(plain.Sd, turned.Sd, 1e-9);
            },
            seed: "0000KH3TwKS3",
            iter: 500);
}
