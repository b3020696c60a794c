using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Teaching;
using GaitSeat.Model;

namespace GaitSeat.Pipeline.Pupil;

/// <summary>The one thing to work on first.</summary>
/// <param name="Flag">Where it was seen first.</param>
/// <param name="Agreed">Whether the coach saw it too; else nobody has looked yet.</param>
internal sealed record FirstTask(Flag Flag, ExerciseCard Card, string Why, bool Agreed)
{
    /// <summary>
    /// The first in the teaching order of what was flagged in the spells. What a coach said no to is left out; where a coach agreed to some, only those count.
    /// </summary>
    /// <returns>Null where nothing is left.</returns>
    public static FirstTask? Of(IReadOnlyList<Flag> flags, IReadOnlySet<SpellKey> spells, IReadOnlyList<Verdict> standing, TeachingOrder order, IReadOnlyDictionary<Fault, ExerciseCard> cards)
    {
        var said = standing.GroupBy(v => (new SpellKey(v.ClipKey, v.SpellNumber), v.Fault)).ToDictionary(g => g.Key, g => g.MaxBy(v => v.JudgedAt)!.Answer);
        var open = flags.Where(f => spells.Contains(f.Spell.Key)).Select(f => (Flag: f, Said: said.TryGetValue((f.Spell.Key, f.Score.Fault), out var answer) ? (VerdictAnswer?)answer : null))
            .Where(f => f.Said is not (VerdictAnswer.DoesNot or VerdictAnswer.CannotTell)).ToArray();
        var agreed = open.Where(f => f.Said == VerdictAnswer.Agrees).ToArray();
        var counted = agreed.Length > 0 ? agreed : open;
        if (order.Sort(counted.Select(f => f.Flag.Score.Fault)) is not [var first, ..]) return null;
        var shown = counted.Where(f => f.Flag.Score.Fault == first.Fault).OrderByDescending(f => f.Flag.Score.Probability).ThenBy(f => f.Flag.Spell.Key).First();
        return new(shown.Flag, cards[first.Fault], first.Why, agreed.Length > 0);
    }
}
