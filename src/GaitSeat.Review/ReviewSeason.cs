using GaitSeat.Faults;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Queue;
using GaitSeat.Faults.Teaching;
using GaitSeat.Faults.Training;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Store;

namespace GaitSeat.Review;

/// <summary>One run of a dataset, scored and ranked: what a judge looks through.</summary>
/// <param name="Spells">Every spell of rising trot the queue could hold.</param>
public sealed record ReviewSeason(
    Dataset Dataset,
    DatasetRun Run,
    IReadOnlyList<RiddenSpell> Spells,
    IReadOnlyList<SpellScore> Scores,
    IReadOnlyList<Flag> Flags,
    IReadOnlyList<QueueItem> Queue,
    IReadOnlyDictionary<Fault, ExerciseCard> Cards,
    ReadSettings Read)
{
    private const double SecondsPerMinute = 60, Percent = 100;

    /// <summary>The random share is drawn in whole spells and may take a little more than its part.</summary>
    private const double SlackMinutes = 2;

    /// <summary>Scores the spells and puts them in the order of the queue.</summary>
    /// <param name="verdicts">Those that stand.</param>
    /// <param name="models">Fault models in use; a fault without one is left to its rule.</param>
    /// <param name="minutes">How long the judge has; null for a queue that holds every flag.</param>
    public static ReviewSeason Of(
        Dataset dataset, DatasetRun run, FeatureTable table, IReadOnlyList<Verdict> verdicts, IReadOnlyDictionary<Fault, FaultModel> models, RuleSettings rules, FaultSettings faults,
        TeachingOrder order, IReadOnlyDictionary<Fault, ExerciseCard> cards, ReadSettings read, double? minutes)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(verdicts);
        ArgumentNullException.ThrowIfNull(faults);
        var flagger = new Flagger(models, rules, faults.Flags);
        var scores = flagger.Score(table);
        var flags = flagger.Flag(scores);
        // The number of verdicts as seed, as 'queue' does: the same state of the dataset gives the same list.
        var list = new QueueRanker(order, faults.Queue).Rank(scores, flags, verdicts, minutes ?? EnoughFor(flags, faults.Queue), verdicts.Count);
        return new(dataset, run, [.. table.Rows.Select(r => r.Spell)], scores, flags, list.Items, cards, read);
    }

    /// <summary>Minutes into which every flagged spell fits beside the exploration's share.</summary>
    private static double EnoughFor(IReadOnlyList<Flag> flags, QueueSettings settings)
    {
        var seconds = flags.Select(f => f.Spell).DistinctBy(s => s.Key).Sum(s => settings.AnswerSeconds + settings.Replays * (s.Spell.EndSeconds - s.Spell.StartSeconds));
        return seconds / SecondsPerMinute / (1 - settings.ExplorationPct / Percent) + SlackMinutes;
    }
}
