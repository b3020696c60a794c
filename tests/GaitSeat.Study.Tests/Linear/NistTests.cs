using GaitSeat.Study.Linear;
using GaitSeat.Study.Tests.References;

namespace GaitSeat.Study.Tests.Linear;

/// <summary>Certified values of the NIST/ITL Statistical Reference Datasets, recomputed in exact rational arithmetic.</summary>
public sealed class NistTests
{
    [Fact]
    public void Norris_HasNineDigits()
    {
        var fit = NistData.NorrisFit();
        AssertCoefficients(9, fit, [-0.262323073774029, 1.00211681802045], [0.232818234301152, 0.429796848199937E-03]);
        Digits.AtLeast(9, 0.884796396144373, fit.ResidualSd);
        Digits.AtLeast(9, 0.999993745883712, fit.RSquared);
        Digits.AtLeast(9, 5436385.54079785, fit.F);
        Digits.AtLeast(9, 26.6173985294224, fit.ResidualSumSquares);
        Assert.Equal(34, fit.DegreesOfFreedom);
    }

    [Fact]
    public void Longley_HasSevenDigits()
    {
        var fit = NistData.LongleyFit();
        AssertCoefficients(
            7, fit,
            [-3482258.63459582, 15.0618722713733, -0.0358191792925910, -2.02022980381683, -1.03322686717359, -0.0511041056535807, 1829.15146461355],
            [890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.226073200069370, 455.478499142212]);
        Digits.AtLeast(7, 304.854073561965, fit.ResidualSd);
        Digits.AtLeast(7, 0.995479004577296, fit.RSquared);
        Digits.AtLeast(7, 330.285339234588, fit.F);
        Digits.AtLeast(7, 836424.055505915, fit.ResidualSumSquares);
    }

    [Fact]
    public void SiRstv_HasNineDigits()
    {
        var anova = OneWayAnova.Of(NistData.SiRstv);
        Assert.Equal((4, 20), (anova.BetweenDf, anova.WithinDf));
        // The certified sums of squares are given to nine digits.
        Digits.AtLeast(8, 5.11462616E-02, anova.BetweenSumSquares);
        Digits.AtLeast(8, 2.16636560E-01, anova.WithinSumSquares);
        Digits.AtLeast(9, 1.18046237440255, anova.F);
        Digits.AtLeast(9, 0.190999039051129, anova.RSquared);
        Digits.AtLeast(9, 0.104076068334656, anova.ResidualSd);
    }

    /// <summary>The values themselves are held to 2e-9 in double precision, so that 0.1 can be had to about eight digits.</summary>
    [Fact]
    public void NumAcc4_HasEightDigits()
    {
        var moments = Moments.Of(NistData.NumAcc4);
        Digits.AtLeast(14, 10000000.2, moments.Mean);
        Digits.AtLeast(8, 0.1, moments.Sd);
        Digits.AtLeast(8, -0.999, Moments.AutocorrelationLag1(NistData.NumAcc4));
    }

    [Fact]
    public void NumAcc1_IsExact()
    {
        double[] values = [10000001, 10000003, 10000002];
        Assert.Equal((10000002.0, 1.0, -0.5), (Moments.Of(values).Mean, Moments.Of(values).Sd, Moments.AutocorrelationLag1(values)));
    }

    private static void AssertCoefficients(double digits, LeastSquaresFit fit, double[] estimates, double[] errors)
    {
        for (var j = 0; j < estimates.Length; j++)
        {
            Digits.AtLeast(digits, estimates[j], fit.Coefficients[j].Estimate);
            Digits.AtLeast(digits, errors[j], fit.Coefficients[j].StandardError);
        }
    }
}
