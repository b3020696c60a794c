namespace GaitSeat.Model;

/// <summary>A spell with its strides and what is known around it: what faults are judged from.</summary>
/// <param name="Rider">Pseudonym; null where the sheet does not say.</param>
/// <param name="Rein"><c>left</c>, <c>right</c> or null.</param>
/// <param name="Strides">The spell's own strides, in time order.</param>
/// <param name="Circumstances">What may be looked at separately, such as <c>horse_colour</c>: columns of the sheet this program does not know.</param>
public sealed record RiddenSpell(
    Provenance Provenance,
    string? Rider,
    string? Horse,
    DateOnly? SessionDate,
    string? Rein,
    Spell Spell,
    IReadOnlyList<Stride> Strides,
    IReadOnlyDictionary<string, string> Circumstances)
{
    public SpellKey Key => new(Provenance.ClipKey, Spell.Number);
}

/// <summary>Names a spell of a dataset under one run.</summary>
public readonly record struct SpellKey(string ClipKey, int SpellNumber) : IComparable<SpellKey>
{
    public int CompareTo(SpellKey other)
    {
        var byClip = string.CompareOrdinal(ClipKey, other.ClipKey);
        return byClip != 0 ? byClip : SpellNumber.CompareTo(other.SpellNumber);
    }

    public static bool operator <(SpellKey a, SpellKey b) => a.CompareTo(b) < 0;

    public static bool operator >(SpellKey a, SpellKey b) => a.CompareTo(b) > 0;

    public static bool operator <=(SpellKey a, SpellKey b) => a.CompareTo(b) <= 0;

    public static bool operator >=(SpellKey a, SpellKey b) => a.CompareTo(b) >= 0;
}
