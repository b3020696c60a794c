using GaitSeat.Study.Planning;

namespace GaitSeat.Study.Tests.Planning;

public sealed class PowerTests
{
    private static readonly SeasonPlanSettings Plan = new() { Riders = 10, LengthsPerRider = 2, StridesPerLength = 5, Horses = 0 };

    [Fact]
    public void MoreRiders_GiveNarrowerIntervals()
    {
        var results = PowerSimulation.ByRiders(Plan, [6, 24], new() { Simulations = 60 });
        // Twice as narrow for four times the riders, and more by the wider t of few.
        Assert.InRange(results[0].MeanHalfWidth / results[1].MeanHalfWidth, 1.7, 3.2);
        Assert.True(results[1].Detected.Count > results[0].Detected.Count);
    }

    /// <summary>
    /// Balanced, two lengths, no horses: the effect is the mean of the riders' differences, with variance (τ² + 2 σ² / (n d²)) / riders for a difference of d cm and n strides a side.
    /// </summary>
    [Fact]
    public void HalfWidth_IsThatOfTheFormula()
    {
        var result = PowerSimulation.Of(Plan with { Riders = 20 }, new() { Simulations = 100 });
        var error = 2 * Math.Sqrt((0.1 * 0.1 + 2.0 / (5 * 2.5 * 2.5)) / 20);
        Assert.InRange(result.MeanHalfWidth / (2.093 * error), 0.93, 1.07);
    }

    [Fact]
    public void FirstPlanNarrowEnough_IsFound()
    {
        var results = PowerSimulation.ByRiders(Plan, [6, 12, 24], new() { Simulations = 40 });
        Assert.Equal(12, PowerSimulation.FirstWithin(results, results[1].HalfWidth90)!.Plan.Riders);
        Assert.Null(PowerSimulation.FirstWithin(results, results[2].HalfWidth90 / 2));
    }

    [Fact]
    public void SameSeed_GivesTheSameNumbers() =>
        Assert.Equal(PowerSimulation.Of(Plan, new() { Simulations = 20 }), PowerSimulation.Of(Plan, new() { Simulations = 20 }));

    /// <summary>Wilson (1927): 8 of 10 is 0.4902 to 0.9433.</summary>
    [Fact]
    public void Share_HasWilsonsInterval()
    {
        var share = new Share(8, 10);
        Assert.Equal(0.4902, share.Low, 5e-5);
        Assert.Equal(0.9433, share.High, 5e-5);
    }
}
