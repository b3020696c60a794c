using GaitSeat.Study.Mixed;
using GaitSeat.Study.Tests.References;

namespace GaitSeat.Study.Tests.Mixed;

/// <summary>Values: Bates D, Mächler M, Bolker B, Walker S (2015) J Stat Softw 67(1):1-48, doi:10.18637/jss.v067.i01; more digits by the closed form of this balanced design.</summary>
public sealed class SleepStudyTests
{
    [Fact]
    public void Reml_GivesThePublishedModel()
    {
        var fit = MixedModel.Fit(SleepStudy.Data());
        Assert.Equal(1743.62827196, fit.CriterionValue, 5e-9);
        AssertModel(fit, 6.824557, 1.545789, 24.740451, 5.922133, 0.0655513);
    }

    [Fact]
    public void Ml_GivesThePublishedModel()
    {
        var fit = MixedModel.Fit(SleepStudy.Data(), new() { Criterion = MixedCriterion.Ml });
        Assert.Equal(1751.93934446, fit.CriterionValue, 5e-9);
        // Published 6.63226 and 1.50224; in this balanced design ML's errors are REML's times sqrt(17 / 18).
        Assert.Equal(6.63226, fit.Fixed[0].StandardError, 2e-5);
        AssertModel(fit, 6.8245565257 * Math.Sqrt(17.0 / 18), 1.5457888952 * Math.Sqrt(17.0 / 18), 23.780567, 5.716835, 0.0813201);
    }

    [Fact]
    public void RandomInterceptOnly_GivesThePublishedModel()
    {
        var fit = MixedModel.Fit(SleepStudy.Data(slope: false));
        Assert.Equal(1786.465, fit.CriterionValue, 5e-4);
        Assert.Equal(37.123827, fit.Random[0].StandardDeviations[0], 5e-7);
        Assert.Equal(30.991234, fit.ResidualSd, 5e-7);
        Assert.Equal([9.746716, 0.804221], fit.Fixed.Select(f => Math.Round(f.StandardError, 6)));
        Assert.Equal(13.015428, fit.Fixed[1].Estimate / fit.Fixed[1].StandardError, 5e-7);
    }

    /// <summary>In this balanced design the slope's error comes from 18 riders' slopes: 17 degrees of freedom.</summary>
    [Fact]
    public void SatterthwaiteOnBalancedData_IsLevelsLessOne() =>
        Assert.All(MixedModel.Fit(SleepStudy.Data()).Fixed, f => Assert.Equal(17, f.DegreesOfFreedom, 1e-3));

    private static void AssertModel(MixedFit fit, double seIntercept, double seSlope, double sdIntercept, double sdSlope, double correlation)
    {
        Assert.Equal(251.405104848485, fit.Fixed[0].Estimate, 5e-10);
        Assert.Equal(10.467285959596, fit.Fixed[1].Estimate, 5e-11);
        Assert.Equal(seIntercept, fit.Fixed[0].StandardError, 5e-7);
        Assert.Equal(seSlope, fit.Fixed[1].StandardError, 5e-7);
        Assert.Equal(sdIntercept, fit.Random[0].StandardDeviations[0], 5e-7);
        Assert.Equal(sdSlope, fit.Random[0].StandardDeviations[1], 5e-7);
        Assert.Equal(correlation, fit.Random[0].Correlations[0, 1], 5e-8);
        Assert.Equal(25.5918156, fit.ResidualSd, 5e-8);
        Assert.False(fit.IsSingular);
    }
}
