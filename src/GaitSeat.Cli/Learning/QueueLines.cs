using System.Globalization;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Queue;
using GaitSeat.Faults.Teaching;
using GaitSeat.Model;
using GaitSeat.Store;

namespace GaitSeat.Cli.Learning;

/// <summary>The coach's list as lines for people and as questions for a sheet.</summary>
internal static class QueueLines
{
    internal static IEnumerable<string> Of(ReviewList list, IReadOnlyList<Flag> flags, TeachingOrder order, IReadOnlyDictionary<Fault, ExerciseCard> cards)
    {
        yield return Text($"{list.Items.Count} spells in about {list.Seconds / 60:0} minutes.");
        for (var i = 0; i < list.Items.Count; i++)
        {
            var item = list.Items[i];
            var spell = item.Spell;
            yield return Text($"{i + 1,3}. {spell.Provenance.ClipFile}, spell {spell.Spell.Number}, {spell.Spell.StartSeconds:0.0} to {spell.Spell.EndSeconds:0.0} s{(spell.Rider is { } rider ? ", " + rider : "")}  [{item.Drawn.ToTerm()}]");
            foreach (var line in Why(item)) yield return "     " + line;
        }

        foreach (var line in Work(list, flags, order, cards)) yield return line;
    }

    /// <summary>The share of unflagged spells in which a coach sees a fault.</summary>
    internal static string Missed(MissedFaults missed, ReviewList list) => missed.Judged == 0
        ? "Missed faults: not known; no unflagged spell drawn at random has been judged yet."
        : Text($"Missed faults: a coach saw one in {missed.Missed} of {missed.Judged} unflagged spells drawn at random: {100 * missed.Rate.Value:0} % (95 % interval {100 * missed.Rate.Lower:0} to {100 * missed.Rate.Upper:0} %); {list.UnflaggedNotSeen} unflagged spells nobody has seen.");

    internal static IEnumerable<AskedVerdict> Asked(QueueItem item)
    {
        var spell = item.Spell;
        return item.Faults.Count == 0
            ? [new(spell.Provenance.ClipFile, spell.Spell.Number, null, null, item.Drawn, false, null, null)]
            : item.Faults.Select(f => new AskedVerdict(spell.Provenance.ClipFile, spell.Spell.Number, f.Fault, null, item.Drawn, f.IsFlagged, f.Probability, f.ClassifierHash));
    }

    private static IEnumerable<string> Why(QueueItem item) => item.Drawn switch
    {
        Drawn.Ranked => item.Flags.Select(f => Text($"{f.Summary}; look at {f.StartSeconds:0.0} to {f.EndSeconds:0.0} s")),
        Drawn.Uncertain => item.Faults.Take(1).Select(f => Text($"unsure of {f.Fault.ToTerm().Replace('_', ' ')} ({100 * f.Probability:0} %): your answer teaches most here")),
        _ => ["nothing flagged; drawn at random to learn what is missed: is there any fault?"],
    };

    private static IEnumerable<string> Work(ReviewList list, IReadOnlyList<Flag> flags, TeachingOrder order, IReadOnlyDictionary<Fault, ExerciseCard> cards)
    {
        var riders = list.Items.Where(i => i.Drawn == Drawn.Ranked).Select(i => i.Spell.Rider).OfType<string>().Distinct().Order(StringComparer.Ordinal);
        foreach (var rider in riders)
        {
            var steps = order.Sort(flags.Where(f => f.Spell.Rider == rider).Select(f => f.Score.Fault));
            yield return $"{rider}, once you agree, in this order: {string.Join("; ", steps.Select(s => $"{s.Fault.ToTerm().Replace('_', ' ')} (card: {cards[s.Fault].Title})"))}.";
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
