using GaitSeat.Study.Agreement;

namespace GaitSeat.Study.Tests.Agreement;

public sealed class KappaAndRocTests
{
    /// <summary>Cohen (1960), Educ Psychol Meas 20:37-46: a common worked example of its formula.</summary>
    [Fact]
    public void Kappa_IsThatOfTheWorkedExample()
    {
        var kappa = CohenKappa.Of(new[,] { { 20, 5 }, { 10, 15 } });
        Assert.Equal(0.70, kappa.Observed, 1e-12);
        Assert.Equal(0.50, kappa.Expected, 1e-12);
        Assert.Equal(0.40, kappa.Value, 1e-12);
    }

    /// <summary>Its error against the spread of kappa over 4000 tables drawn with the shares of the example; known to 1.1 %, and a large-sample formula.</summary>
    [Fact]
    public void ErrorOfKappa_IsItsSpreadOverTables()
    {
        var random = new Random(6);
        double[] shares = [0.4, 0.1, 0.2, 0.3];
        var kappas = Enumerable.Range(0, 4000).Select(_ =>
        {
            var drawn = MathNet.Numerics.Distributions.Multinomial.Sample(random, shares, 200);
            return CohenKappa.Of(new[,] { { drawn[0], drawn[1] }, { drawn[2], drawn[3] } }).Value;
        }).ToArray();
        var error = CohenKappa.Of(new[,] { { 80, 20 }, { 40, 60 } }).StandardError;
        Assert.InRange(error / Study.Linear.Moments.Of(kappas).Sd, 0.95, 1.05);
    }

    [Fact]
    public void OneCategoryOnly_HasNoKappa() => Assert.Throws<StudyException>(() => CohenKappa.Of(new[,] { { 20, 0 }, { 0, 0 } }));

    /// <summary>CT ratings of 58 normal and 51 abnormal: Hanley JA, McNeil BJ (1982) Radiology 143:29-36, tables I and II.</summary>
    [Fact]
    public void AreaUnderTheCurve_IsThePublishedOne()
    {
        var roc = RocArea.Of(negatives: [33, 6, 6, 11, 2], positives: [3, 2, 2, 11, 33]);
        Assert.Equal(.8931711, roc.Area, 5e-8);
        Assert.Equal(.818204, roc.Q1, 5e-7);
        Assert.Equal(.831251, roc.Q2, 5e-7);
        Assert.Equal(.03199, roc.StandardError, 5e-6);
        Assert.Equal(.032487, RocArea.FromArea(roc.Area, 51, 58).StandardError, 5e-7);
    }

    /// <summary>Hanley and McNeil's equation 2, as in the documentation of the function se_auc.</summary>
    [Theory]
    [InlineData(.75, 20, 200, 0.06498283)]
    [InlineData(.75, 110, 110, 0.03282048)]
    [InlineData(.75, 20, 20, 0.07789072)]
    public void ErrorFromTheArea_IsThePublishedOne(double area, int positives, int negatives, double error) =>
        Assert.Equal(error, RocArea.FromArea(area, positives, negatives).StandardError, 5e-9);

    [Fact]
    public void NoPositives_AreRefused() => Assert.Throws<StudyException>(() => RocArea.Of([3, 4], [0, 0]));
}
