using GaitSeat.Faults;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Teaching;
using GaitSeat.Model;
using GaitSeat.Pipeline.Pupil;

namespace GaitSeat.Pipeline.Tests.Privacy;

public sealed class FirstTaskTests
{
    private static readonly TeachingOrder Order = TeachingOrder.Read(Path.Combine(Repository.Root, "datasets", "teaching-order.json"));
    private static readonly IReadOnlyDictionary<Fault, ExerciseCard> Cards = ExerciseCards.Read(Path.Combine(Repository.Root, "datasets", "exercises"));

    [Fact]
    public void First_IsTheFirstOfTheTeachingOrder_OfThisWeek()
    {
        Flag[] flags = [Flag("a", Fault.BusyHands), Flag("a", Fault.ChairSeat), Flag("old", Fault.StirrupShort)];
        var task = Of(flags, []);
        Assert.Equal((Fault.ChairSeat, Fault.ChairSeat, false), (task!.Flag.Score.Fault, task.Card.Fault, task.Agreed));
    }

    [Fact]
    public void WhatTheCoachSaidNoTo_IsNotPutBeforeAPupil()
    {
        Flag[] flags = [Flag("a", Fault.BusyHands), Flag("a", Fault.ChairSeat)];
        Assert.Equal(Fault.BusyHands, Of(flags, [Said("a", Fault.ChairSeat, VerdictAnswer.DoesNot, 1)])!.Flag.Score.Fault);
        Assert.Null(Of([flags[1]], [Said("a", Fault.ChairSeat, VerdictAnswer.Agrees, 1), Said("a", Fault.ChairSeat, VerdictAnswer.CannotTell, 2)]));
    }

    [Fact]
    public void WhereTheCoachAgreedToSome_OnlyThoseCount()
    {
        var task = Of([Flag("a", Fault.BusyHands), Flag("a", Fault.ChairSeat)], [Said("a", Fault.BusyHands, VerdictAnswer.Agrees, 1)]);
        Assert.Equal((Fault.BusyHands, true), (task!.Flag.Score.Fault, task.Agreed));
    }

    [Fact]
    public void Days_AreMeansOfTrustedStrides_WithTheSharedErrorAsFloor()
    {
        var spell = Spell("a") with { SessionDate = new(2026, 5, 1), Strides = [Stride(8, "good"), Stride(10, "good"), Stride(99, "untrusted_view")] };
        var day = Assert.Single(DayMean.Of([spell], StrideMeasure.RiseHeightCm));
        Assert.Equal((9.0, 2), (day.Value.Value, day.Strides));
        // Median of the strides' errors 1; spread 2 over two strides.
        Assert.Equal(Math.Sqrt(1 + 1), day.Value.StandardError, 9);
    }

    [Theory]
    [InlineData(9, 9.5, "take it as the same")]
    [InlineData(6, 14, "more by 8.0 cm")]
    [InlineData(14, 6, "less by 8.0 cm")]
    public void Change_IsOnlyCalledOnePastTheCamerasError(double before, double now, string said)
    {
        RiddenSpell On(int day, double rise) => Spell("d" + day) with { SessionDate = new(2026, 5, day), Strides = [Stride(rise, "good"), Stride(rise, "good")] };
        var progress = ProgressWords.Of([On(1, before), On(8, now)], new(2026, 5, 2));
        Assert.Contains(said, Assert.Single(progress).Sentences, StringComparison.Ordinal);
        Assert.Empty(ProgressWords.Of([On(1, before)], new(2026, 5, 2)));
    }

    private static FirstTask? Of(Flag[] flags, Verdict[] verdicts) => FirstTask.Of(flags, new HashSet<SpellKey> { new("a", 1) }, verdicts, Order, Cards);

    private static Flag Flag(string clip, Fault fault) => new(new(new FeatureRow(Spell(clip), []), fault, 0.9, null, null, true), [], 1, 2);

    private static RiddenSpell Spell(string clip) => new(
        new(clip, clip + ".mp4", "p", "m", "0", 1), "R1", null, null, null, new(1, Gait.RisingTrot, Facing.Right, 0, 5, 1, 1, 8, 10, 2, 0, Measured.Missing, 1), [], new Dictionary<string, string>());

    private static Stride Stride(double riseCm, string quality)
    {
        var measures = new MeasureSet();
        measures[StrideMeasure.RiseHeightCm] = new(riseCm, 1);
        return new(1, 1, Facing.Right, 0, 0.3, 0.7, 1, quality, measures);
    }

    private static Verdict Said(string clip, Fault fault, VerdictAnswer answer, int second) =>
        new(clip, clip + ".mp4", 1, fault, answer, "coach", new(2026, 5, 3, 9, 0, second, TimeSpan.Zero), null, Drawn.Ranked, true, 0.9, "p", "m", null);
}
