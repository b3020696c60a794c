using GaitSeat.Faults.Verdicts;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests;

/// <summary>What of a history of answers and withdrawals stands.</summary>
public sealed class StandingVerdictsTests
{
    [Fact]
    public void Withdrawal_TakesTheLatestAnswerBack_AndOnlyThatJudges()
    {
        var standing = StandingVerdicts.Of([Said("anna", VerdictAnswer.Agrees, 1), Said("anna", VerdictAnswer.DoesNot, 2), Said("bert", VerdictAnswer.CannotTell, 3), Said("anna", VerdictAnswer.Withdrawn, 4)]);
        Assert.Equal([("anna", VerdictAnswer.Agrees), ("bert", VerdictAnswer.CannotTell)], standing.Select(v => (v.Judge, v.Answer)));
    }

    [Fact]
    public void Withdrawals_InARow_GoBackStepByStep_AndNoFurther()
    {
        var history = new[] { Said("anna", VerdictAnswer.Agrees, 1), Said("anna", VerdictAnswer.Withdrawn, 2), Said("anna", VerdictAnswer.Withdrawn, 3), Said("anna", VerdictAnswer.DoesNot, 4) };
        Assert.Equal(VerdictAnswer.DoesNot, Assert.Single(StandingVerdicts.Of(history)).Answer);
        Assert.Equal(VerdictAnswer.DoesNot, Assert.Single(StandingVerdicts.Of(history.Reverse())).Answer);
    }

    [Fact]
    public void Withdrawal_InTheSecondOfItsAnswer_ComesAfterIt() =>
        Assert.Empty(StandingVerdicts.Of([Said("anna", VerdictAnswer.Withdrawn, 1), Said("anna", VerdictAnswer.Agrees, 1)]));

    private static Verdict Said(string judge, VerdictAnswer answer, int second) => new(
        new('a', 64), "clip.mp4", 1, Fault.ChairSeat, answer, judge, new(2026, 5, 31, 6, 0, second, TimeSpan.Zero), null, Drawn.Ranked, true, 0.9, "pipe1", "model1", null);
}
