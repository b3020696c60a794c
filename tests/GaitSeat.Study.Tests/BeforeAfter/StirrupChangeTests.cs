using GaitSeat.Study.BeforeAfter;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Tests.BeforeAfter;

public sealed class StirrupChangeTests
{
    /// <summary>As many strides on either side of every rider: the mixed model is the paired t test.</summary>
    [Fact]
    public void BalancedRiders_AreThePairedTest()
    {
        var (outcome, riders, after) = Made(12, strides: 10);
        var found = StirrupChange.Of(outcome, riders, after);
        Assert.False(found.IsSingular);
        Assert.Equal(found.Paired.Estimate, found.Pooled.Estimate, 1e-9);
        Assert.Equal(found.Paired.StandardError, found.Pooled.StandardError, 1e-7);
        Assert.Equal(11, found.Pooled.DegreesOfFreedom, 1e-2);
        Assert.Equal(found.Paired.PValue, found.Pooled.PValue, 1e-5);
        Assert.InRange(1.5, found.Pooled.Low, found.Pooled.High);
    }

    /// <summary>Welch's t of two small samples by hand: means 2 and 5, variances 1 and 4 over 3 and 3.</summary>
    [Fact]
    public void RiderAlone_IsWelchsTest()
    {
        var found = StirrupChange.Of([1, 2, 3, 3, 5, 7, 1, 2, 4, 5, 6, 9], [.. "aaaaaabbbbbb".Select(c => $"{c}")], [.. "nnnyyynnnyyy".Select(c => c == 'y')]);
        var a = found.Riders[0];
        Assert.Equal(("a", 3, 3), (a.Rider, a.StridesBefore, a.StridesAfter));
        Assert.Equal(3, a.Change, 1e-12);
        Assert.Equal(Math.Sqrt(5.0 / 3), a.StandardError, 1e-12);
        Assert.Equal(25.0 / 9 / (1.0 / 18 + 16.0 / 18), a.DegreesOfFreedom, 1e-9);
    }

    [Fact]
    public void RiderSeenOnOneSideOnly_IsLeftOutByName()
    {
        var (outcome, riders, after) = Made(4, strides: 6);
        var found = StirrupChange.Of([.. outcome, 1, 2, 3], [.. riders, "late", "late", "late"], [.. after, true, true, true]);
        Assert.Equal(["late"], found.LeftOut);
        Assert.Equal(4, found.Riders.Count);
    }

    [Fact]
    public void OneRider_IsRefused()
    {
        var (outcome, riders, after) = Made(1, strides: 6);
        Assert.Contains("1 riders have two strides", Assert.Throws<StudyException>(() => StirrupChange.Of(outcome, riders, after)).Message, StringComparison.Ordinal);
    }

    private static (double[] Outcome, string[] Riders, bool[] After) Made(int riders, int strides)
    {
        var random = new Random(14);
        var rows = Enumerable.Range(0, riders).SelectMany(r =>
        {
            var (own, change) = (Normal.Sample(random, 12, 2), Normal.Sample(random, 1.5, 1));
            return Enumerable.Range(0, 2 * strides).Select(i => (Value: own + (i >= strides ? change : 0) + Normal.Sample(random, 0, 1), Rider: $"rider {r}", After: i >= strides)).ToArray();
        }).ToArray();
        return ([.. rows.Select(r => r.Value)], [.. rows.Select(r => r.Rider)], [.. rows.Select(r => r.After)]);
    }
}
