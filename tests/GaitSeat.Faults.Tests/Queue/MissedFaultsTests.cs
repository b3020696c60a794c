using GaitSeat.Faults.Evaluation;
using GaitSeat.Faults.Queue;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Queue;

public sealed class MissedFaultsTests
{
    /// <summary>Wilson 1927, by the formula: 1 of 10 at 95 %: 0.0179 to 0.4042; 0 of 10: 0 to 0.2775.</summary>
    [Theory]
    [InlineData(1, 10, 0.0179, 0.4042)]
    [InlineData(0, 10, 0, 0.2775)]
    [InlineData(10, 10, 0.7225, 1)]
    public void Wilson_HoldsAtTheEdges(int count, int of, double lower, double upper)
    {
        var interval = WilsonInterval.Of(count, of, 0.95);
        Assert.Equal(lower, interval.Lower, 4);
        Assert.Equal(upper, interval.Upper, 4);
    }

    [Fact]
    public void OnlyRandomUnflaggedSpells_CountEachOnce()
    {
        var told = MissedFaults.Of(
            [
                Said("a", Fault.ChairSeat, VerdictAnswer.Agrees), Said("a", Fault.ForkSeat, VerdictAnswer.DoesNot),
                Said("b", Fault.ChairSeat, VerdictAnswer.DoesNot), Said("b", Fault.ForkSeat, VerdictAnswer.CannotTell),
                Said("c", Fault.ChairSeat, VerdictAnswer.CannotTell),
                Said("d", Fault.ChairSeat, VerdictAnswer.Agrees) with { Drawn = Drawn.Ranked },
                Said("e", Fault.ChairSeat, VerdictAnswer.Agrees) with { ToldFlagged = true },
            ],
            0.95);
        Assert.Equal((2, 1, 1), (told.Judged, told.Missed, told.CannotTell));
        Assert.Equal(0.5, told.Rate.Value, 12);
    }

    [Fact]
    public void ChangeOfMind_Counts()
    {
        var later = Said("a", Fault.ChairSeat, VerdictAnswer.DoesNot) with { JudgedAt = new(2026, 7, 1, 0, 0, 0, TimeSpan.Zero) };
        Assert.Equal(0, MissedFaults.Of([later, Said("a", Fault.ChairSeat, VerdictAnswer.Agrees)], 0.95).Missed);
    }

    [Fact]
    public void NothingJudged_GivesNoRate() => Assert.True(double.IsNaN(MissedFaults.Of([], 0.95).Rate.Value));

    private static Verdict Said(string clip, Fault fault, VerdictAnswer answer) =>
        new(clip, clip, 1, fault, answer, "J", new(2026, 6, 1, 0, 0, 0, TimeSpan.Zero), null, Drawn.Random, false, null, "p", "m", null);
}
