using GaitSeat.Faults.Features;
using GaitSeat.Faults.Flags;
using GaitSeat.Model;

namespace GaitSeat.Faults.Queue;

/// <summary>A spell to look at.</summary>
/// <param name="Faults">What to judge, the most useful first; empty where all are to be judged (drawn at random).</param>
/// <param name="Usefulness">Sum over the faults of severity times probability times newness; 0 where the spell is there for another reason.</param>
/// <param name="Seconds">Time it is reckoned to take.</param>
public sealed record QueueItem(FeatureRow Row, Drawn Drawn, IReadOnlyList<SpellScore> Faults, IReadOnlyList<Flag> Flags, double Usefulness, double Seconds)
{
    public RiddenSpell Spell => Row.Spell;
}

/// <summary>The coach's list.</summary>
/// <param name="Items">In the order to look: the ranked first, then the uncertain, then the random ones.</param>
/// <param name="UnflaggedNotSeen">Spells without a flag that nobody has judged: what the random ones stand for.</param>
public sealed record ReviewList(IReadOnlyList<QueueItem> Items, int UnflaggedNotSeen)
{
    public double Seconds => Items.Sum(i => i.Seconds);
}
