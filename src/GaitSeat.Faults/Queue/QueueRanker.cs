using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Teaching;
using GaitSeat.Model;

namespace GaitSeat.Faults.Queue;

/// <summary>Puts the spells that are most worth a coach's minute first, within the minutes there are.</summary>
public sealed class QueueRanker(TeachingOrder order, QueueSettings settings)
{
    private const double SecondsPerMinute = 60;
    private const double Percent = 100;
    private const double EvenOdds = 0.5;

    /// <param name="scores">All scores of the run, flagged or not.</param>
    /// <param name="flags">The flagged ones with their reasons.</param>
    /// <param name="verdicts">What was judged already; a fault in a spell is not asked for twice.</param>
    /// <param name="seed">Of the random share.</param>
    public ReviewList Rank(IReadOnlyList<SpellScore> scores, IReadOnlyList<Flag> flags, IReadOnlyList<Verdict> verdicts, double minutes, int seed)
    {
        ArgumentNullException.ThrowIfNull(scores);
        ArgumentNullException.ThrowIfNull(flags);
        ArgumentNullException.ThrowIfNull(verdicts);
        ArgumentOutOfRangeException.ThrowIfNegative(minutes);
        var judged = verdicts.Select(v => (new SpellKey(v.ClipKey, v.SpellNumber), v.Fault)).ToHashSet();
        var unflagged = Unflagged(scores, [.. judged.Select(j => j.Item1)]);
        var (all, exploration) = (minutes * SecondsPerMinute, minutes * SecondsPerMinute * settings.ExplorationPct / Percent);
        // The random draw comes first, from all unflagged spells alike: drawn from what the uncertain leave over it would be biased.
        var drawn = Shuffled(unflagged, seed);
        var random = First(drawn, exploration * settings.RandomPct / Percent);
        var taken = random.Select(i => i.Row.Key).ToHashSet();
        var uncertain = Within(Uncertain(scores, judged, taken), exploration - Time(random));
        taken.UnionWith(uncertain.Select(i => i.Row.Key));
        var ranked = Within(OnePerRiderFirst(Ranked(flags, judged, KnownTo(scores, verdicts), taken)), all - Time(random) - Time(uncertain));
        var left = all - Time(random) - Time(uncertain) - Time(ranked);
        random.AddRange(First([.. drawn.Skip(random.Count).Where(i => !taken.Contains(i.Row.Key))], left));
        return new([.. ranked, .. uncertain, .. random], unflagged.Count);
    }

    /// <summary>How often a coach has agreed on a fault of a rider: each time, seeing it once more is worth less.</summary>
    private static Dictionary<(string, Fault), int> KnownTo(IReadOnlyList<SpellScore> scores, IReadOnlyList<Verdict> verdicts)
    {
        var riders = scores.Select(s => s.Row).DistinctBy(r => r.Key).ToDictionary(r => r.Key, RiderOf);
        return verdicts.Where(v => v.Answer == VerdictAnswer.Agrees && riders.ContainsKey(new(v.ClipKey, v.SpellNumber)))
            .GroupBy(v => (riders[new(v.ClipKey, v.SpellNumber)], v.Fault)).ToDictionary(g => g.Key, g => g.Select(v => (v.ClipKey, v.SpellNumber)).Distinct().Count());
    }

    private IEnumerable<QueueItem> Ranked(IReadOnlyList<Flag> flags, HashSet<(SpellKey, Fault)> judged, Dictionary<(string, Fault), int> known, HashSet<SpellKey> taken)
    {
        double Worth(Flag f) => order[f.Score.Fault].Severity * f.Score.Probability / (1 + known.GetValueOrDefault((RiderOf(f.Score.Row), f.Score.Fault)));
        return flags.Where(f => !judged.Contains((f.Score.Row.Key, f.Score.Fault)) && !taken.Contains(f.Score.Row.Key)).GroupBy(f => f.Score.Row.Key)
            .Select(g => g.OrderByDescending(Worth).ThenBy(f => f.Score.Fault).ToArray())
            .Select(g => new QueueItem(g[0].Score.Row, Drawn.Ranked, [.. g.Select(f => f.Score)], g, g.Sum(Worth), SecondsOf(g[0].Score.Row)));
    }

    /// <summary>The best of each rider, then the second of each: ten clips of one rider teach a coach one thing.</summary>
    private static IEnumerable<QueueItem> OnePerRiderFirst(IEnumerable<QueueItem> items) =>
        items.GroupBy(i => RiderOf(i.Row), StringComparer.Ordinal)
            .SelectMany(g => g.OrderByDescending(i => i.Usefulness).ThenBy(i => i.Row.Key).GroupBy(i => i.Row.Key.ClipKey, StringComparer.Ordinal).SelectMany((clip, round) => clip.Select(i => (Round: round, Item: i))))
            .OrderBy(i => i.Round).ThenByDescending(i => i.Item.Usefulness).ThenBy(i => i.Item.Row.Key).Select(i => i.Item);

    private IEnumerable<QueueItem> Uncertain(IReadOnlyList<SpellScore> scores, HashSet<(SpellKey, Fault)> judged, HashSet<SpellKey> taken) =>
        scores.Where(s => Math.Abs(s.Probability - EvenOdds) <= settings.UncertainWithin && !s.IsFlagged && !judged.Contains((s.Row.Key, s.Fault)) && !taken.Contains(s.Row.Key))
            .GroupBy(s => s.Row.Key).Select(g => g.OrderBy(s => Math.Abs(s.Probability - EvenOdds)).ThenBy(s => s.Fault).ToArray())
            .OrderBy(g => Math.Abs(g[0].Probability - EvenOdds)).ThenBy(g => g[0].Row.Key)
            .Select(g => new QueueItem(g[0].Row, Drawn.Uncertain, g, [], 0, SecondsOf(g[0].Row)));

    private QueueItem[] Shuffled(List<FeatureRow> unflagged, int seed)
    {
        var rows = unflagged.ToArray();
        new Random(seed).Shuffle(rows);
        return [.. rows.Select(r => new QueueItem(r, Drawn.Random, [], [], 0, SecondsOf(r)))];
    }

    /// <summary>As many of the first as fit by the mean length of all, fixed without a look at their own: to take what fits would favour the short ones.</summary>
    private static List<QueueItem> First(QueueItem[] drawn, double seconds) =>
        drawn.Length == 0 ? [] : [.. drawn.Take((int)Math.Round(Math.Max(0, seconds) / drawn.Average(i => i.Seconds)))];

    /// <summary>Spells no fault of which is flagged and none of which was judged.</summary>
    private static List<FeatureRow> Unflagged(IReadOnlyList<SpellScore> scores, HashSet<SpellKey> seen) =>
        [.. scores.GroupBy(s => s.Row.Key).Where(g => !seen.Contains(g.Key) && !g.Any(s => s.IsFlagged)).OrderBy(g => g.Key).Select(g => g.First().Row)];

    /// <summary>Takes in turn what still fits; one that is too long does not bar shorter ones behind it.</summary>
    private static List<QueueItem> Within(IEnumerable<QueueItem> items, double seconds)
    {
        var taken = new List<QueueItem>();
        foreach (var item in items)
        {
            if (item.Seconds > seconds) continue;
            taken.Add(item);
            seconds -= item.Seconds;
        }

        return taken;
    }

    private static double Time(List<QueueItem> items) => items.Sum(i => i.Seconds);

    /// <summary>A clip whose rider is not known is a rider of its own.</summary>
    private static string RiderOf(FeatureRow row) => row.Spell.Rider ?? row.Spell.Provenance.ClipKey;

    private double SecondsOf(FeatureRow row) => settings.AnswerSeconds + settings.Replays * (row.Spell.Spell.EndSeconds - row.Spell.Spell.StartSeconds);
}
