using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Planning;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Tests.DoseResponse;

public sealed class SimexTests
{
    /// <summary>
    /// Simple regression: with added error variance λ the slope is β σ² / (σ² + (1 + λ) s²); the quadratic through λ = 0, 0.5, 1, 1.5, 2, read at -1, follows in closed form
    /// (Carroll et al. 2006, Measurement Error in Nonlinear Models, section 5.1).
    /// </summary>
    [Fact]
    public void SimpleRegression_FollowsTheClosedForm()
    {
        var random = new Random(3);
        var truth = Enumerable.Range(0, 4000).Select(_ => Normal.Sample(random, 0, 2)).ToArray();
        double[] measured = [.. truth.Select(x => x + Normal.Sample(random, 0, 1))], outcome = [.. truth.Select(x => 0.5 * x + Normal.Sample(random, 0, 0.5))];
        var result = Simex.Of(measured, 1, [.. Enumerable.Range(0, 4000)], x => Slope(x, outcome), new() { Replicates = 30 });
        double At(double added) => result.Naive * (4 + 1) / (4 + 1 + added);
        Assert.All(result.Trend, t => Assert.Equal(At(t.AddedVariance), t.Estimate, 0.005));
        Assert.Equal(Extrapolated(At), result.Corrected, 0.01);
        Assert.True(Math.Abs(result.Corrected - 0.5) < 0.4 * Math.Abs(result.Naive - 0.5), $"{result.Naive} to {result.Corrected}");
    }

    /// <summary>One error per session and not per stride: averaging over strides does not take it out, and the correction knows.</summary>
    [Fact]
    public void ErrorOfASession_IsSharedByItsStrides()
    {
        var season = SimulatedSeason.Draw(new() { Riders = 40, LengthsPerRider = 4, StridesPerLength = 6, Horses = 0, EffectPerCm = 0.5, EffectSdPerCm = 0 }, new(2));
        var measurement = Enumerable.Range(0, season.Outcome.Length).Select(i => i / 6).ToArray();
        var random = new Random(8);
        var errors = Enumerable.Range(0, measurement[^1] + 1).Select(_ => Normal.Sample(random, 0, 1.5)).ToArray();
        var mismeasured = season with { Exposure = season.Exposure with { Values = [.. season.Exposure.Values.Select((x, i) => x + errors[measurement[i]])] } };
        var settings = new DoseSettings { Horse = HorseRole.None, RandomSlope = false };
        double Effect(double[] x) => MixedModel.Fit(DoseDesign.Of(mismeasured with { Exposure = season.Exposure with { Values = x } }, settings).Mixed).Fixed[1].Estimate;
        var result = Simex.Of(mismeasured.Exposure.Values, 1.5, measurement, Effect, new() { Replicates = 8 });
        Assert.InRange(result.Naive, 0.3, 0.44);
        Assert.InRange(result.Corrected, 0.43, 0.53);
    }

    [Fact]
    public void FitsThatFail_AreLeftOutAndCounted()
    {
        double[] exposure = [1, 2, 3, 4];
        var calls = 0;
        var result = Simex.Of(exposure, 1, [0, 1, 2, 3], x => Interlocked.Increment(ref calls) % 5 == 3 ? throw new StudyException(StudyProblem.NoConvergence, "no") : 2.0, new() { Replicates = 10 });
        Assert.Equal(8, result.Failed);
        Assert.Equal(2, result.Corrected, 1e-9);
    }

    [Fact]
    public void FitsThatMostlyFail_AreRefused() => Assert.Throws<StudyException>(() => Simex.Of(
        [1, 2, 3], 1, [0, 1, 2], x => x[0] == 1 ? 2.0 : throw new StudyException(StudyProblem.NoConvergence, "no"), new() { Replicates = 10 }));

    [Fact]
    public void Reliability_TellsTheError()
    {
        double[] measurements = [1, 2, 3, 4, 5];
        Assert.Equal(Math.Sqrt(2.5 * 0.2), Simex.ErrorSd(measurements, 0.8), 1e-12);
        Assert.Throws<StudyException>(() => Simex.ErrorSd(measurements, 1.2));
    }

    private static double Slope(double[] x, double[] y) => LeastSquaresFit.Of(y, [DesignColumn.Intercept(x.Length), new("x", x)]).Coefficients[1].Estimate;

    /// <summary>Least-squares parabola through five even points, by orthogonal polynomials.</summary>
    private static double Extrapolated(Func<double, double> at)
    {
        double[] values = [.. Enumerable.Range(0, 5).Select(i => at(i / 2.0))];
        var mean = values.Average();
        var linear = Enumerable.Range(0, 5).Sum(i => (i - 2) * values[i]) / 10;
        int[] second = [2, -1, -2, -1, 2];
        var bend = Enumerable.Range(0, 5).Sum(i => second[i] * values[i]) / 14;
        // λ = -1 stands two steps before the first point: four before the middle; the polynomial is t² - 2.
        return mean - 4 * linear + 14 * bend;
    }
}
