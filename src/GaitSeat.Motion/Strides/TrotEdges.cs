using GaitSeat.Model;
using GaitSeat.Motion.Gaits;

namespace GaitSeat.Motion.Strides;

/// <summary>
/// Where exactly rising trot begins and ends. Windows tell it to within half their length; strides that go on at the beat and with the rise of the spell
/// beyond its border belong to it, and the neighbour is the shorter.
/// </summary>
internal static class TrotEdges
{
    /// <summary>What is left of a neighbour must be longer than this, s; else it is gone.</summary>
    private const double LeastLeftSeconds = 0.1;

    /// <param name="reachSeconds">How far a border may be wrong.</param>
    /// <param name="cut">Cuts a spell into strides, looking for more of them up to the two given instants.</param>
    /// <returns>The spells in their order, with the strides of rising trot.</returns>
    public static List<(RawSpell Spell, List<StrideCandidate> Strides)> Settle(
        IReadOnlyList<RawSpell> spells, double reachSeconds, Func<RawSpell, double, double, List<StrideCandidate>> cut)
    {
        var settled = spells.Select(s => (Spell: s, Strides: new List<StrideCandidate>())).ToList();
        for (var k = 0; k < settled.Count; k++)
        {
            var spell = settled[k].Spell;
            if (spell.Gait != Gait.RisingTrot) continue;
            var from = k > 0 ? Math.Max(settled[k - 1].Spell.StartSeconds, spell.StartSeconds - reachSeconds) : spell.StartSeconds;
            var to = k + 1 < settled.Count ? Math.Min(settled[k + 1].Spell.EndSeconds, spell.EndSeconds + reachSeconds) : spell.EndSeconds;
            var strides = cut(spell, from, to);
            if (strides.Count > 0)
                spell = spell with { StartSeconds = Math.Min(spell.StartSeconds, strides[0].Start.Seconds), EndSeconds = Math.Max(spell.EndSeconds, strides[^1].End.Seconds) };
            settled[k] = (spell, strides);
            if (k > 0) settled[k - 1] = settled[k - 1] with { Spell = settled[k - 1].Spell with { EndSeconds = spell.StartSeconds } };
            if (k + 1 < settled.Count) settled[k + 1] = settled[k + 1] with { Spell = settled[k + 1].Spell with { StartSeconds = spell.EndSeconds } };
        }

        return settled.FindAll(s => s.Spell.Seconds > LeastLeftSeconds);
    }
}
