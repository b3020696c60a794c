using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Tests.References;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Tests.Mixed;

/// <summary>Balanced designs, where REML is the analysis of variance (Searle, Casella and McCulloch 1992, Variance Components, chapter 4).</summary>
public sealed class ClosedFormTests
{
    private const int Riders = 8, Horses = 5, Repeats = 3;

    [Fact]
    public void OneFactor_IsTheAnovaEstimate()
    {
        var fit = MixedModel.Fit(Dyestuff.Data(Dyestuff.Yield));
        var anova = OneWayAnova.Of([.. Dyestuff.Yield.Chunk(5)]);
        Assert.Equal(Math.Sqrt((anova.BetweenMeanSquare - anova.WithinMeanSquare) / 5), fit.Random[0].StandardDeviations[0], 1e-6);
        Assert.Equal(anova.ResidualSd, fit.ResidualSd, 1e-6);
        // Bates et al. (2015), supplement; R's lme4 1.1-31 gives 319.654276842.
        Assert.Equal(319.654276842, fit.CriterionValue, 1e-8);
    }

    [Fact]
    public void SpreadBelowThatWithin_IsZeroAndSaidToBeSingular()
    {
        var fit = MixedModel.Fit(Dyestuff.Data(Dyestuff.SecondYield));
        Assert.True(fit.IsSingular);
        Assert.Equal(0, fit.Random[0].StandardDeviations[0]);
        Assert.All(fit.Random[0].Effects, e => Assert.Equal(0, e[0], 1e-12));
        Assert.Equal(Moments.Of(Dyestuff.SecondYield).Sd, fit.ResidualSd, 1e-9);
        // All 30 values are then independent: the interval is that of the plain mean.
        Assert.Equal(29, fit.Fixed[0].DegreesOfFreedom, 1e-3);
        Assert.Equal(Moments.Of(Dyestuff.SecondYield).Sd / Math.Sqrt(30), fit.Fixed[0].StandardError, 1e-9);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void TwoFactors_AreTheAnovaEstimates(bool nested)
    {
        var outcome = Rows(nested);
        var fit = MixedModel.Fit(Data(outcome, nested));
        double Mean(Func<int, bool> keep) => outcome.Where((_, i) => keep(i)).Average();
        var grand = outcome.Average();
        var ssRider = Horses * Repeats * Enumerable.Range(0, Riders).Sum(r => Sq(Mean(i => RiderOf(i) == r) - grand));
        var ssHorse = Riders * Repeats * Enumerable.Range(0, Horses).Sum(h => Sq(Mean(i => HorseOf(i) == h) - grand));
        var ssPair = Repeats * Pairs().Sum(p => Sq(Mean(i => RiderOf(i) == p.Rider && HorseOf(i) == p.Horse) - Mean(i => RiderOf(i) == p.Rider)));
        var ssTotal = outcome.Sum(y => Sq(y - grand));
        var msRider = ssRider / (Riders - 1);
        if (nested)
        {
            var (msPair, msWithin) = (ssPair / (Riders * (Horses - 1)), (ssTotal - ssRider - ssPair) / (Riders * Horses * (Repeats - 1)));
            AssertSds(fit, (msRider - msPair) / (Horses * Repeats), (msPair - msWithin) / Repeats, msWithin);
        }
        else
        {
            var msRest = (ssTotal - ssRider - ssHorse) / (outcome.Length - Riders - Horses + 1);
            AssertSds(fit, (msRider - msRest) / (Horses * Repeats), (ssHorse / (Horses - 1) - msRest) / (Riders * Repeats), msRest);
        }
    }

    private static void AssertSds(MixedFit fit, double rider, double horse, double residual)
    {
        Assert.Equal(Math.Sqrt(rider), fit.Random[0].StandardDeviations[0], 1e-7);
        Assert.Equal(Math.Sqrt(horse), fit.Random[1].StandardDeviations[0], 1e-7);
        Assert.Equal(Math.Sqrt(residual), fit.ResidualSd, 1e-7);
    }

    private static double[] Rows(bool nested)
    {
        var random = new Random(11);
        double Noise(double sd) => Normal.Sample(random, 0, sd);
        var riders = Enumerable.Range(0, Riders).Select(_ => Noise(3)).ToArray();
        var horses = Enumerable.Range(0, Riders * Horses).Select(_ => Noise(2)).ToArray();
        return [.. Enumerable.Range(0, Riders * Horses * Repeats).Select(i => 10 + riders[RiderOf(i)] + horses[HorseOf(i) + (nested ? RiderOf(i) * Horses : 0)] + Noise(1))];
    }

    private static MixedData Data(double[] outcome, bool nested)
    {
        var intercept = DesignColumn.Intercept(outcome.Length);
        var riders = Grouping.Of("rider", [.. outcome.Select((_, i) => $"r{RiderOf(i)}")]);
        var horses = Grouping.Of("horse", [.. outcome.Select((_, i) => $"h{HorseOf(i)}")]);
        return new() { Outcome = outcome, Fixed = [intercept], Random = [new(riders, [intercept]), new(nested ? horses.Within(riders) : horses, [intercept])] };
    }

    private static IEnumerable<(int Rider, int Horse)> Pairs() => from r in Enumerable.Range(0, Riders) from h in Enumerable.Range(0, Horses) select (r, h);

    private static int RiderOf(int i) => i / (Horses * Repeats);

    private static int HorseOf(int i) => i / Repeats % Horses;

    private static double Sq(double x) => x * x;
}
