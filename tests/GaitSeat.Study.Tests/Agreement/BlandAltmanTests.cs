using GaitSeat.Study.Agreement;
using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Tests.Agreement;

/// <summary>Peak expiratory flow (l/min) of 17 people by two meters: Bland JM, Altman DG (1986) Lancet 327:307-310, doi:10.1016/S0140-6736(86)90837-8.</summary>
public sealed class BlandAltmanTests
{
    private static readonly double[] LargeFirst = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
    private static readonly double[] LargeSecond = [490, 397, 512, 401, 470, 611, 415, 431, 638, 429, 420, 633, 275, 492, 165, 372, 421];
    private static readonly double[] MiniFirst = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
    private static readonly double[] MiniSecond = [525, 415, 508, 444, 500, 625, 460, 390, 642, 432, 420, 605, 227, 467, 268, 370, 443];

    private static MethodPair[] FirstReadings => [.. LargeFirst.Select((l, i) => new MethodPair($"s{i}", l, MiniFirst[i]))];

    [Fact]
    public void PublishedLimits_AreFound()
    {
        var limits = BlandAltman.Of(FirstReadings, spread: 2);
        Assert.Equal(-2.1176, limits.Bias, 5e-5);
        Assert.Equal(38.7651, limits.Sd, 5e-5);
        Assert.Equal(-79.65, limits.Lower, 5e-3);
        Assert.Equal(75.41, limits.Upper, 5e-3);
        Assert.Equal(9.40, limits.BiasSe, 5e-3);
        Assert.Equal((17, 17, 0.0), (limits.Subjects, limits.Pairs, limits.BetweenSubjectSd));
        var usual = BlandAltman.Of(FirstReadings);
        Assert.Equal(-78.10, usual.Lower, 5e-3);
        Assert.Equal(73.86, usual.Upper, 5e-3);
    }

    /// <summary>The paper gives about sqrt(3 s² / n) = 16.28; without its rounding of 2 to 1.96 and of n - 1 to n: s² (1/n + 1.96² / 2(n - 1)).</summary>
    [Fact]
    public void ErrorOfALimit_IsThePapersWithoutItsRounding()
    {
        var limits = BlandAltman.Of(FirstReadings);
        Assert.Equal(38.7651 * Math.Sqrt(1 / 17.0 + 1.959964 * 1.959964 / 32), limits.LimitSe, 1e-3);
        Assert.InRange(limits.LimitSe / 16.28, 0.98, 1.02);
    }

    [Fact]
    public void Repeatability_IsThePublishedOne()
    {
        Assert.Equal(43.3, BlandAltman.Repeatability([.. LargeFirst.Zip(LargeSecond)]), 0.05);
        Assert.Equal(56.3, BlandAltman.Repeatability([.. MiniFirst.Zip(MiniSecond)]), 0.05);
    }

    /// <summary>With as many pairs from each subject the components are those of a random-intercept model of the differences by REML.</summary>
    [Fact]
    public void RepeatedPairs_HaveTheComponentsOfTheMixedModel()
    {
        var pairs = Repeated(subjects: 15, each: _ => 4);
        var limits = BlandAltman.Of(pairs);
        double[] differences = [.. pairs.Select(p => p.Difference)];
        var intercept = DesignColumn.Intercept(differences.Length);
        var fit = MixedModel.Fit(new() { Outcome = differences, Fixed = [intercept], Random = [new(Grouping.Of("subject", [.. pairs.Select(p => p.Subject)]), [intercept])] });
        Assert.Equal(fit.Random[0].StandardDeviations[0], limits.BetweenSubjectSd, 1e-6);
        Assert.Equal(Math.Sqrt(Math.Pow(fit.Random[0].StandardDeviations[0], 2) + fit.ResidualSd * fit.ResidualSd), limits.Sd, 1e-6);
        Assert.Equal(fit.Fixed[0].StandardError, limits.BiasSe, 1e-6);
    }

    /// <summary>Known truth: bias 1, spread 2 between and 1 within subjects; 95 % of single differences lie within √5 · 1.96 of it.</summary>
    [Fact]
    public void UnequalRepeats_HoldTheTruth()
    {
        var limits = BlandAltman.Of(Repeated(subjects: 400, each: s => 1 + s % 5));
        Assert.Equal(1, limits.Bias, 3 * limits.BiasSe);
        Assert.Equal(1 + 1.96 * Math.Sqrt(5), limits.Upper, 3 * limits.LimitSe);
        Assert.Equal(1 - 1.96 * Math.Sqrt(5), limits.Lower, 3 * limits.LimitSe);
        Assert.InRange(limits.LimitSe, 0.05, 0.3);
    }

    /// <summary>The error of a limit against its spread over many studies; 400 of them give it to 3.5 %.</summary>
    [Fact]
    public void ErrorOfALimit_IsItsSpreadOverStudies()
    {
        var many = Enumerable.Range(0, 400).Select(i => BlandAltman.Of(Repeated(subjects: 30, each: s => 2 + s % 3, seed: i))).ToArray();
        var spread = Moments.Of([.. many.Select(m => m.Upper)]).Sd;
        Assert.InRange(many.Average(m => m.LimitSe) / spread, 0.88, 1.12);
    }

    [Fact]
    public void TwoSubjects_AreRefused() => Assert.Equal(
        StudyProblem.TooFewRows, Assert.Throws<StudyException>(() => BlandAltman.Of([new("a", 1, 2), new("b", 1, 3), new("b", 2, 3)])).Problem);

    private static MethodPair[] Repeated(int subjects, Func<int, int> each, int seed = 3)
    {
        var random = new Random(seed);
        return
        [
            .. Enumerable.Range(0, subjects).SelectMany(s =>
            {
                var own = 1 + Normal.Sample(random, 0, 2);
                return Enumerable.Range(0, each(s)).Select(_ =>
                {
                    var truth = Normal.Sample(random, 10, 3);
                    return new MethodPair($"s{s}", truth + own + Normal.Sample(random, 0, 1), truth);
                }).ToArray();
            }),
        ];
    }
}
