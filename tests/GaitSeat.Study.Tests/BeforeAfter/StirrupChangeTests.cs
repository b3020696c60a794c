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
        var found = StirrupChange.Of(outcome, riders, OneDay(riders), after);
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
        var found = StirrupChange.Of([1, 2, 3, 3, 5, 7, 1, 2, 4, 5, 6, 9], [.. "aaaaaabbbbbb".Select(c => $"{c}")], [.. "aaaaaabbbbbb".Select(_ => "day")], [.. "nnnyyynnnyyy".Select(c => c == 'y')]);
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
        var found = StirrupChange.Of([.. outcome, 1, 2, 3], [.. riders, "late", "late", "late"], OneDay([.. riders, "a", "a", "a"]), [.. after, true, true, true]);
        Assert.Equal(["late"], found.LeftOut);
        Assert.Equal(4, found.Riders.Count);
    }

    [Fact]
    public void OneRider_IsRefused()
    {
        var (outcome, riders, after) = Made(1, strides: 6);
        Assert.Contains("1 riders have a session with two strides", Assert.Throws<StudyException>(() => StirrupChange.Of(outcome, riders, OneDay(riders), after)).Message, StringComparison.Ordinal);
    }

    /// <summary>A rider's better day is no change: strides before on one day and after on another are not compared.</summary>
    [Fact]
    public void OnlyStridesOfOneSession_AreCompared()
    {
        var (outcome, riders, after) = Made(6, strides: 10);
        // A second day with both sides, 20 higher, and a third with one side only, 50 higher.
        double[] rows = [.. outcome, .. outcome.Select(v => v + 20), .. outcome.Select(v => v + 50)];
        string[] days = [.. OneDay(riders), .. riders.Select(_ => "second"), .. riders.Select(_ => "third")];
        var found = StirrupChange.Of(rows, [.. riders, .. riders, .. riders], days, [.. after, .. after, .. after.Select(_ => true)]);
        var alone = StirrupChange.Of(outcome, riders, OneDay(riders), after);
        Assert.Equal(12, found.Sessions);
        Assert.Equal(alone.Paired.Estimate, found.Paired.Estimate, 1e-9);
        Assert.Equal(alone.Pooled.Estimate, found.Pooled.Estimate, 1e-6);
        // Twice the strides of the same spread: the error of the mean of two days.
        Assert.Equal(alone.Riders[0].StandardError / Math.Sqrt(2), found.Riders[0].StandardError, 1e-9);
        Assert.Equal(2 * alone.Riders[0].DegreesOfFreedom, found.Riders[0].DegreesOfFreedom, 1e-6);
    }

    private static string[] OneDay(string[] riders) => [.. riders.Select(_ => "day")];

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
