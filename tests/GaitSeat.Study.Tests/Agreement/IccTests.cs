using GaitSeat.Study.Agreement;

namespace GaitSeat.Study.Tests.Agreement;

/// <summary>Six targets, four judges: Shrout PE, Fleiss JL (1979) Psychol Bull 86:420-428, tables 2 to 4.</summary>
public sealed class IccTests
{
    private static readonly double[][] Ratings = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]];

    private static readonly RatingTable Table = RatingTable.Of(Ratings);

    [Fact]
    public void MeanSquares_AreThePublishedOnes()
    {
        Assert.Equal(11.241667, Table.BetweenTargets, 5e-7);
        Assert.Equal(6.263889, Table.Within, 5e-7);
        Assert.Equal(32.486111, Table.BetweenJudges, 5e-7);
        Assert.Equal(1.019444, Table.Residual, 5e-7);
    }

    [Theory]
    [InlineData(IccForm.OneWaySingle, .165742)]
    [InlineData(IccForm.AgreementSingle, .289764)]
    [InlineData(IccForm.ConsistencySingle, .714841)]
    [InlineData(IccForm.OneWayMean, .442797)]
    [InlineData(IccForm.AgreementMean, .620051)]
    [InlineData(IccForm.ConsistencyMean, .909316)]
    public void SixForms_AreThePublishedOnes(IccForm form, double value)
    {
        var icc = Table.Icc(form);
        Assert.Equal(value, icc.Value, 5e-7);
        Assert.True(icc.Low < value && value < icc.High && icc.High <= 1);
    }

    /// <summary>The ends of an interval put the mean squares' ratio at the quantiles of F: here turned back into ratios.</summary>
    [Fact]
    public void Interval_OfConsistency_StandsAtTheQuantilesOfF()
    {
        var icc = Table.Icc(IccForm.ConsistencySingle);
        double RatioAt(double rho) => (1 + 3 * rho) / (1 - rho);
        var f = Table.BetweenTargets / Table.Residual;
        Assert.Equal(0.975, MathNet.Numerics.Distributions.FisherSnedecor.CDF(5, 15, f / RatioAt(icc.Low)), 1e-9);
        Assert.Equal(0.025, MathNet.Numerics.Distributions.FisherSnedecor.CDF(5, 15, f / RatioAt(icc.High)), 1e-9);
    }

    /// <summary>R's irr and psych give 0.019 to 0.761 for ICC(2,1) of this table (their documentation, from memory).</summary>
    [Fact]
    public void Interval_OfAgreement_IsThatOfThePackages()
    {
        var icc = Table.Icc(IccForm.AgreementSingle);
        Assert.Equal(0.019, icc.Low, 1e-3);
        Assert.Equal(0.761, icc.High, 1e-3);
    }

    /// <summary>SEM of agreement holds the judges' spread (32.486 - 1.019) / 6 too; MDC is 1.96 √2 times it (Weir 2005).</summary>
    [Fact]
    public void ErrorOfMeasurement_FollowsFromTheMeanSquares()
    {
        Assert.Equal(Math.Sqrt(1.0194444), Table.StandardErrorOfMeasurement(agreement: false), 1e-6);
        Assert.Equal(Math.Sqrt(1.0194444 + (32.4861111 - 1.0194444) / 6), Table.StandardErrorOfMeasurement(agreement: true), 1e-6);
        Assert.Equal(1.959964 * 1.4142136 * Math.Sqrt(1.0194444), Table.MinimalDetectableChange95(agreement: false), 1e-5);
    }

    [Fact]
    public void IncompleteTable_IsRefused() =>
        Assert.Equal(StudyProblem.BadData, Assert.Throws<StudyException>(() => RatingTable.Of([[1, 2], [1, 2, 3]])).Problem);

    [Fact]
    public void OneTarget_IsRefused() => Assert.Equal(StudyProblem.TooFewRows, Assert.Throws<StudyException>(() => RatingTable.Of([[1, 2]])).Problem);
}
