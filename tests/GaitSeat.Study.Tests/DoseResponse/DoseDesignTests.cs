using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Planning;

namespace GaitSeat.Study.Tests.DoseResponse;

public sealed class DoseDesignTests
{
    private static readonly DoseData Season = SimulatedSeason.Draw(
        new() { Riders = 60, LengthsPerRider = 5, StridesPerLength = 4, EffectPerCm = 0.3, BetweenRidersPerCm = -0.4, RiderSd = 1, EffectSdPerCm = 0.05 }, new(5));

    /// <summary>Within riders 0.3 per cm, between them -0.4: the split finds both, pooling finds neither.</summary>
    [Fact]
    public void WithinRiders_IsNotConfoundedByWhatMakesRidersDiffer()
    {
        var fit = Fit(new(), out var design);
        var effect = WaldInterval.Of(fit, design.Effect("+2 cm", 70, 72));
        Assert.InRange(0.6, effect.Low, effect.High);
        Assert.True(effect.High - effect.Low < 0.15);
        var between = fit.Fixed.Single(f => f.Name == "stirrup_length_cm, mean of the rider");
        Assert.InRange(-0.4, between.Low, between.High);
    }

    /// <summary>Pooling weighs within and between together. Where riders' strides tell little and riders differ much in length, it lands between the two, and its interval holds neither.</summary>
    [Fact]
    public void Pooled_FallsBetween()
    {
        var season = SimulatedSeason.Draw(
            new() { Riders = 300, LengthsPerRider = 2, StridesPerLength = 2, Horses = 0, EffectPerCm = 0.3, BetweenRidersPerCm = -0.4, RiderSd = 0.5, StrideSd = 1.5, EffectSdPerCm = 0 }, new(5));
        var settings = new DoseSettings { Comparison = DoseComparison.Pooled, RandomSlope = false, Horse = HorseRole.None };
        var pooled = MixedModel.Fit(DoseDesign.Of(season, settings).Mixed).Fixed[1];
        Assert.True(pooled.Low > -0.4 && pooled.High < 0.3, $"{pooled}");
    }

    [Theory]
    [InlineData(DoseShape.Quadratic)]
    [InlineData(DoseShape.Spline)]
    public void StraightTruth_IsFoundByEveryShape(DoseShape shape)
    {
        var fit = Fit(new() { Shape = shape }, out var design);
        Assert.All(new[] { 66.0, 69, 71, 74 }, x =>
        {
            var effect = WaldInterval.Of(fit, design.Effect("to x", 70, x));
            Assert.True(Math.Abs(effect.Estimate - 0.3 * (x - 70)) < 4 * effect.StandardError, $"{effect}");
        });
    }

    /// <summary>A bend of -0.1 per cm²: a straight line misses it, both curves hold it.</summary>
    [Theory]
    [InlineData(DoseShape.Linear, false)]
    [InlineData(DoseShape.Quadratic, true)]
    [InlineData(DoseShape.Spline, true)]
    public void Bend_IsFoundByCurves(DoseShape shape, bool found)
    {
        var straight = DoseDesign.Of(Season, new());
        var moved = straight.Mixed.Fixed[1].Values;
        var bent = Season with { Outcome = [.. Season.Outcome.Select((y, i) => y - 0.1 * moved[i] * moved[i])] };
        var design = DoseDesign.Of(bent, new() { Shape = shape });
        var fit = MixedModel.Fit(design.Mixed);
        var curve = design.Curve(fit, [design.Center - 4, design.Center, design.Center + 4]);
        var bend = curve[0].Value + curve[2].Value - 2 * curve[1].Value;
        Assert.Equal(found, Math.Abs(bend + 3.2) < 0.6);
    }

    [Fact]
    public void Adjustment_TakesItsShareOut()
    {
        var duration = Season.Outcome.Select((_, i) => 0.7 + 0.01 * (i % 7)).ToArray();
        var with = Season with { Outcome = [.. Season.Outcome.Select((y, i) => y + 20 * duration[i])], Adjustment = [new("stride_duration_s", duration)] };
        var fit = MixedModel.Fit(DoseDesign.Of(with, new()).Mixed);
        Assert.InRange(20, fit.Fixed[^1].Low, fit.Fixed[^1].High);
        Assert.Equal(Fit(new(), out _).Fixed[1].Estimate, fit.Fixed[1].Estimate, 0.02);
    }

    /// <summary>A rider's own curve lies between that of all riders and that of their rows alone, and passes through their mean.</summary>
    [Fact]
    public void RiderCurve_IsPulledTowardAll()
    {
        var fit = Fit(new() { Horse = HorseRole.None }, out var design);
        var rider = fit.Random[0];
        for (var r = 0; r < 10; r++)
        {
            var mean = design.RiderMeans[r];
            var curve = design.RiderCurve(fit, r, [mean - 1, mean, mean + 1]);
            Assert.Equal(fit.Fixed[1].Estimate + rider.Effects[r][1], (curve[2].Value - curve[0].Value) / 2, 1e-9);
            Assert.True(curve[1].StandardError < curve[0].StandardError + 1e-12);
            var own = Season.Outcome.Where((_, i) => design.Mixed.Random[0].Groups.LevelOf[i] == r).Average();
            Assert.InRange(Math.Abs(curve[1].Value - own), 0, 0.2);
        }
    }

    [Fact]
    public void LengthsThatNeverChangeWithinARider_AreRefused()
    {
        var still = Season with { Exposure = Season.Exposure with { Values = [.. Season.Riders.Select(r => 60.0 + r.Length + r[^1])] } };
        var error = Assert.Throws<StudyException>(() => DoseDesign.Of(still, new()));
        Assert.Contains("'stirrup_length_cm' does not change within any rider", error.Message, StringComparison.Ordinal);
        Assert.Equal(2, DoseDesign.Of(still, new() { Comparison = DoseComparison.Pooled, Horse = HorseRole.None }).Mixed.Fixed.Count);
    }

    [Fact]
    public void HorsesAskedForAndNotGiven_AreRefused() => Assert.Contains(
        "the model has horses", Assert.Throws<StudyException>(() => DoseDesign.Of(Season with { Horses = null }, new())).Message, StringComparison.Ordinal);

    private static MixedFit Fit(DoseSettings settings, out DoseDesign design)
    {
        design = DoseDesign.Of(Season, settings);
        return MixedModel.Fit(design.Mixed, settings.Model);
    }
}
