using GaitSeat.Faults.Verdicts;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Verdicts;

public sealed class VerdictLabelsTests
{
    private static readonly SpellKey Key = new("k", 1);

    [Fact]
    public void ChangeOfMind_CountsAndTheOldIsSuperseded()
    {
        var set = Of(Said("A", VerdictAnswer.Agrees, 1), Said("A", VerdictAnswer.DoesNot, 2));
        Assert.False(set.Labels[Key]);
        Assert.Equal(1, set.Superseded);
    }

    [Fact]
    public void OrderOfRows_DoesNotMatter() =>
        Assert.False(Of(Said("A", VerdictAnswer.DoesNot, 2), Said("A", VerdictAnswer.Agrees, 1)).Labels[Key]);

    [Fact]
    public void JudgesWhoDiffer_AreSettledByMajorityAndATieIsLeftOut()
    {
        Verdict[] two = [Said("A", VerdictAnswer.Agrees, 1), Said("B", VerdictAnswer.DoesNot, 1)];
        Assert.Equal((0, 1), (Of(two).Labels.Count, Of(two).Ties));
        Assert.True(Of([.. two, Said("C", VerdictAnswer.Agrees, 1)]).Labels[Key]);
    }

    [Fact]
    public void CannotTell_IsNoLabelAndNoTie()
    {
        var set = Of(Said("A", VerdictAnswer.CannotTell, 1));
        Assert.Equal((0, 0, 1), (set.Labels.Count, set.Ties, set.CannotTell));
        Assert.True(Of(Said("A", VerdictAnswer.CannotTell, 1), Said("B", VerdictAnswer.Agrees, 1)).Labels[Key]);
    }

    [Fact]
    public void OtherFaultsAndOtherRuns_DoNotCount()
    {
        var set = Of(Said("A", VerdictAnswer.Agrees, 1) with { Fault = Fault.ForkSeat }, Said("A", VerdictAnswer.Agrees, 1) with { PipelineHash = "older" });
        Assert.Equal((0, 1), (set.Labels.Count, set.OtherRun));
    }

    private static LabelSet Of(params Verdict[] verdicts) => VerdictLabels.Of(Fault.ChairSeat, verdicts, "p", "m");

    private static Verdict Said(string judge, VerdictAnswer answer, int day) =>
        new("k", "k.mp4", 1, Fault.ChairSeat, answer, judge, new(2026, 6, day, 0, 0, 0, TimeSpan.Zero), null, Drawn.Chosen, null, null, "p", "m", null);
}
