using GaitSeat.Study.Mixed;
using GaitSeat.Study.Tests.References;

namespace GaitSeat.Study.Tests.Mixed;

public sealed class ExplainedVarianceTests
{
    /// <summary>Random intercept only: the adjusted intraclass correlation of sleepstudy is 0.589309 (Bates et al. 2015, from the published SDs).</summary>
    [Fact]
    public void RandomIntercept_GivesTheAdjustedIcc()
    {
        var parts = ExplainedVariance.Of(MixedModel.Fit(SleepStudy.Data(slope: false)));
        Assert.Equal(0.589309, parts.RandomVariances[0] / (parts.RandomVariances[0] + parts.ResidualVariance), 5e-7);
    }

    /// <summary>By hand from the published covariance: mean over days 0 to 9 of v0 + 2 d c + d² v1, and b² times the days' variance.</summary>
    [Fact]
    public void RandomSlope_IsAveragedOverTheRows()
    {
        var parts = ExplainedVariance.Of(MixedModel.Fit(SleepStudy.Data()));
        const double v0 = 24.740451 * 24.740451, v1 = 5.922133 * 5.922133, c = 0.0655513 * 24.740451 * 5.922133, residual = 25.5918156 * 25.5918156;
        var random = Enumerable.Range(0, 10).Average(d => v0 + 2 * d * c + d * d * v1);
        const double fixedPart = 10.467285959596 * 10.467285959596 * 18 * 82.5 / 179;
        Assert.Equal(fixedPart / (fixedPart + random + residual), parts.Marginal, 1e-6);
        Assert.Equal((fixedPart + random) / (fixedPart + random + residual), parts.Conditional, 1e-6);
    }
}
