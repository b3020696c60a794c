using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Planning;

namespace GaitSeat.Study.Tests.Planning;

public sealed class MillionStridesTests
{
    /// <summary>A million strides of 500 riders on 120 horses in 2500 sessions: the truth is found, each number within four of its standard errors (of a spread: about its size over √(2 levels)).</summary>
    [Fact]
    public void MillionStrides_GiveBackTheTruth()
    {
        if (!LongRun.IsOn) Assert.Skip("A million rows; runs under ./gaitseat test --long.");
        var season = SimulatedSeason.Draw(
            new() { Riders = 500, LengthsPerRider = 5, StridesPerLength = 400, Horses = 120, HorsesPerRider = 3, EffectPerCm = 0.25, SessionSd = 0.3 }, new(40));
        Assert.Equal(1_000_000, season.Outcome.Length);
        var fit = MixedModel.Fit(DoseDesign.Of(season, new()).Mixed);
        Assert.False(fit.IsSingular);
        Assert.Equal(0.25, fit.Fixed[1].Estimate, 4 * fit.Fixed[1].StandardError);
        Assert.InRange(fit.Fixed[1].StandardError, 0.003, 0.008);
        Assert.Equal(2, fit.Random[0].StandardDeviations[0], 4 * 2 / Math.Sqrt(1000));
        Assert.Equal(0.1, fit.Random[0].StandardDeviations[1], 4 * 0.1 / Math.Sqrt(1000));
        Assert.Equal(1, fit.Random[1].StandardDeviations[0], 4 / Math.Sqrt(240));
        Assert.Equal(0.3, fit.Random[2].StandardDeviations[0], 4 * 0.3 / Math.Sqrt(2 * 1500));
        Assert.Equal(1, fit.ResidualSd, 4 / Math.Sqrt(2e6));
    }
}
