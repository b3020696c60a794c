using GaitSeat.Study.Mixed;
using GaitSeat.Study.Tests.References;

namespace GaitSeat.Study.Tests.Mixed;

public sealed class IntervalTests
{
    private static readonly Contrast Days = new("days", [0, 1]);
    private static readonly Contrast Intercept = new("intercept", [1, 0]);

    /// <summary>Bates et al. (2015), section 5.1: confint of the sleepstudy model fitted by ML.</summary>
    [Fact]
    public void Profile_IsThePublishedInterval()
    {
        var fit = MixedModel.Fit(SleepStudy.Data());
        var (intercept, days) = (ProfileInterval.Of(fit, Intercept), ProfileInterval.Of(fit, Days));
        Assert.Equal(237.681, intercept.Low, 5e-4);
        Assert.Equal(265.130, intercept.High, 5e-4);
        Assert.Equal(7.359, days.Low, 5e-4);
        Assert.Equal(13.576, days.High, 5e-4);
    }

    [Fact]
    public void ProfileOfAMultiple_IsTheMultipleOfTheProfile()
    {
        var fit = MixedModel.Fit(MadeRows.Of(8));
        var (one, three) = (ProfileInterval.Of(fit, Days), ProfileInterval.Of(fit, new("three", [0, 3])));
        Assert.Equal(3 * one.Low, three.Low, 1e-4);
        Assert.Equal(3 * one.High, three.High, 1e-4);
        Assert.Equal(one.PValue, three.PValue, 1e-6);
    }

    /// <summary>In this balanced design the estimates are linear in the data with the standard error of the fit; 1000 draws give a standard deviation to 2.2 %.</summary>
    [Fact]
    public void Bootstrap_HasTheErrorOfTheModel()
    {
        var fit = MixedModel.Fit(SleepStudy.Data());
        var boot = Bootstrap.Of(fit, [Days, Intercept], new() { Replicates = 1000, Seed = 3 });
        Assert.Equal(0, boot.Failed);
        for (var c = 0; c < 2; c++)
        {
            var wald = fit.Fixed[1 - c];
            Assert.InRange(boot.Contrasts[c].StandardError / wald.StandardError, 0.93, 1.07);
            Assert.InRange((boot.Contrasts[c].High - boot.Contrasts[c].Low) / (2 * 1.96 * wald.StandardError), 0.9, 1.1);
        }
    }

    [Fact]
    public void BootstrapFromTheSameSeed_IsTheSame()
    {
        var fit = MixedModel.Fit(MadeRows.Of(8));
        BootstrapResult Draw(int seed) => Bootstrap.Of(fit, [Days], new() { Replicates = 40, Seed = seed });
        Assert.Equal(Draw(7).Contrasts[0], Draw(7).Contrasts[0]);
        Assert.NotEqual(Draw(7).Contrasts[0].Low, Draw(8).Contrasts[0].Low);
    }

    [Fact]
    public void ContrastOfWrongLength_IsRefused()
    {
        var error = Assert.Throws<StudyException>(() => WaldInterval.Of(MixedModel.Fit(SleepStudy.Data()), new("effect", [0, 1, 0])));
        Assert.Contains("3 weights; the model has 2 fixed effects", error.Message, StringComparison.Ordinal);
    }
}
