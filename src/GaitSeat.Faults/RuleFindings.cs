using GaitSeat.Faults.Rules;
using GaitSeat.Model;

namespace GaitSeat.Faults;

/// <summary>
/// Findings by rule: each spell of rising trot is held against each fault's limits. Show them with <see cref="Cautions.Text"/>.
/// Where a measure is missing, too few strides have it or its error is too wide, nothing is said.
/// </summary>
public static class RuleFindings
{
    /// <returns>Findings by spell, then in the order of <see cref="Fault"/>.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<Finding> Find(IReadOnlyList<Spell> spells, IReadOnlyList<Stride> strides, RuleSettings settings)
    {
        ArgumentNullException.ThrowIfNull(spells);
        ArgumentNullException.ThrowIfNull(strides);
        ArgumentNullException.ThrowIfNull(settings);
        var bySpell = strides.ToLookup(s => s.SpellNumber);
        return [.. spells.Where(s => s.Gait == Gait.RisingTrot).OrderBy(s => s.Number)
            .SelectMany(s => OfSpell(new(s, [.. bySpell[s.Number].OrderBy(x => x.Number)]), settings))];
    }

    private static IEnumerable<Finding> OfSpell(SpellStrides spell, RuleSettings settings)
    {
        var found = new RuleBook(settings, spell).Rules().Select(r => RuleCheck.Check(r, spell, settings))
            .Append(Irregularity.Check(spell, settings)).OfType<Finding>().ToArray();
        var silenced = found.Select(f => RuleBook.Silences(f.Fault)).OfType<Fault>().ToHashSet();
        return found.Where(f => !silenced.Contains(f.Fault));
    }
}
