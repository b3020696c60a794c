using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Queue;
using GaitSeat.Faults.Teaching;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Queue;

public sealed class QueueRankerTests
{
    private static readonly TeachingOrder Order = TeachingOrder.Read(Path.Combine(Repository.Root, "datasets", "teaching-order.json"));

    /// <summary>Every spell takes 20 s to answer and twice its 8 x 0.72 s to watch.</summary>
    private const double SecondsEach = 20 + 2 * 8 * 0.72;

    [Fact]
    public void GraverAndSurer_ComesFirst()
    {
        var queue = Rank(10, Score("a", "R1", Fault.ForcedHeel, 0.9), Score("b", "R2", Fault.HeavyLanding, 0.9), Score("c", "R3", Fault.HeavyLanding, 0.6));
        Assert.Equal(["b", "c", "a"], Clips(queue, Drawn.Ranked));
    }

    [Fact]
    public void EachRider_ComesOnceBeforeAnyComesTwice()
    {
        var queue = Rank(10, Score("a", "R1", Fault.HeavyLanding, 0.99), Score("b", "R1", Fault.HeavyLanding, 0.98), Score("c", "R1", Fault.HeavyLanding, 0.97), Score("d", "R2", Fault.ForcedHeel, 0.6));
        Assert.Equal(["a", "d", "b", "c"], Clips(queue, Drawn.Ranked));
    }

    [Fact]
    public void FaultOftenAgreedOfTheRider_IsWorthLess()
    {
        SpellScore[] scores = [Score("a", "R1", Fault.HeavyLanding, 0.9), Score("b", "R2", Fault.HeavyLanding, 0.7), Score("old", "R1", Fault.HeavyLanding, 0.9)];
        Assert.Equal(["a", "b", "old"], Clips(Rank(10, scores), Drawn.Ranked));
        var known = Ranker().Rank(scores, Flags(scores), [Said("old", Fault.HeavyLanding)], 10, 1);
        Assert.Equal(["b", "a"], Clips(known, Drawn.Ranked));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(30)]
    public void Budget_IsKept(double minutes)
    {
        var queue = Rank(minutes, Many());
        Assert.True(queue.Seconds <= minutes * 60 + SecondsEach / 2, $"{queue.Seconds} s in {minutes} min");
        if (minutes > 0) Assert.True(queue.Seconds > minutes * 60 - 3 * SecondsEach, $"{queue.Seconds} s of {minutes} min used");
    }

    [Fact]
    public void Exploration_HasItsShareOfUncertainAndRandom()
    {
        var queue = Rank(60, Many());
        Assert.Equal(6 * 60, Clips(queue, Drawn.Random).Length * SecondsEach, SecondsEach);
        Assert.Equal(6 * 60, Clips(queue, Drawn.Uncertain).Length * SecondsEach, SecondsEach);
        Assert.Equal(queue.Items.Count, queue.Items.Select(i => i.Row.Key).Distinct().Count());
    }

    [Fact]
    public void TimeThatFlagsLeave_GoesToRandomOnes()
    {
        var queue = Rank(10, [Score("a", "R1", Fault.HeavyLanding, 0.9), .. Many().Where(s => s.Probability < 0.1)]);
        Assert.Single(Clips(queue, Drawn.Ranked));
        Assert.InRange(queue.Seconds, 600 - SecondsEach, 600 + SecondsEach);
    }

    [Fact]
    public void RandomOnes_AreUnflaggedUnseenAndAllAlikeLikely()
    {
        var scores = Many();
        var seen = scores.Where(s => !s.IsFlagged).Take(5).Select(s => Said(s.Row.Spell.Provenance.ClipKey, s.Fault)).ToArray();
        var counts = new Dictionary<string, int>();
        for (var seed = 0; seed < 400; seed++)
        {
            foreach (var clip in Clips(Ranker().Rank(scores, Flags(scores), seen, 20, seed), Drawn.Random)) counts[clip] = counts.GetValueOrDefault(clip) + 1;
        }

        var could = scores.Where(s => !s.IsFlagged).Select(s => s.Row.Spell.Provenance.ClipKey).Except(seen.Select(v => v.ClipKey)).ToArray();
        Assert.Equal(could.Order(), counts.Keys.Order());

        // 4 of 195 in each of 400 draws: 8.2 each on the mean; a Poisson count above 25 has odds below 1 in a million.
        Assert.InRange(counts.Values.Max(), 8, 25);
    }

    [Fact]
    public void JudgedFault_IsNotAskedForAgain()
    {
        SpellScore[] scores = [Score("a", "R1", Fault.HeavyLanding, 0.9), Score("a", "R1", Fault.ChairSeat, 0.9)];
        var queue = Ranker().Rank(scores, Flags(scores), [Said("a", Fault.HeavyLanding) with { Answer = VerdictAnswer.DoesNot }], 10, 1);
        Assert.Equal([Fault.ChairSeat], Assert.Single(queue.Items).Faults.Select(f => f.Fault));
    }

    /// <summary>200 calm spells, 100 flagged and 100 in doubt.</summary>
    private static SpellScore[] Many() =>
    [
        .. Enumerable.Range(0, 100).Select(i => Score($"f{i:000}", $"R{i % 20}", Fault.HeavyLanding, 0.6 + i * 0.003)),
        .. Enumerable.Range(0, 100).Select(i => Score($"u{i:000}", $"R{i % 20}", Fault.ChairSeat, 0.25 + i * 0.002)),
        .. Enumerable.Range(0, 100).Select(i => Score($"c{i:000}", $"R{i % 20}", Fault.ForkSeat, 0.02)),
    ];

    private static ReviewList Rank(double minutes, params SpellScore[] scores) => Ranker().Rank(scores, Flags(scores), [], minutes, 1);

    private static QueueRanker Ranker() => new(Order, new());

    private static Flag[] Flags(SpellScore[] scores) => [.. scores.Where(s => s.IsFlagged).Select(s => new Flag(s, ["because"], 0, 1))];

    private static string[] Clips(ReviewList queue, Drawn drawn) => [.. queue.Items.Where(i => i.Drawn == drawn).Select(i => i.Spell.Provenance.ClipKey)];

    private static SpellScore Score(string clip, string rider, Fault fault, double probability)
    {
        var spell = new RiddenSpell(new(clip, clip, "p", "m", "v", 1), rider, null, null, null, Rides.Spell(strides: 8), [], new Dictionary<string, string>());
        return new(new FeatureRow(spell, []), fault, probability, null, "hash", probability >= 0.5);
    }

    private static Verdict Said(string clip, Fault fault) =>
        new(clip, clip, 1, fault, VerdictAnswer.Agrees, "J", new(2026, 6, 1, 0, 0, 0, TimeSpan.Zero), null, Drawn.Ranked, true, null, "p", "m", null);
}
