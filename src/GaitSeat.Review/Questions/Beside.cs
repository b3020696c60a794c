using GaitSeat.Faults.Flags;
using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>Why a spell is offered to be looked at beside another.</summary>
internal enum BesideKind
{
    /// <summary>The same rider on a day before.</summary>
    Earlier,

    /// <summary>The same rider on that day or after.</summary>
    Later,

    /// <summary>Another rider's spell that shows least of what is asked.</summary>
    Best,
}

/// <param name="Mean">Mean of the measure over the spell's trusted strides.</param>
internal sealed record BesideSpell(RiddenSpell Spell, BesideKind Kind, Measured Mean)
{
    /// <summary>Names the spell within the run.</summary>
    public string Id { get; } = $"{Spell.Provenance.ClipKey}-{Spell.Spell.Number}";
}

/// <summary>
/// What a spell may be looked at beside of: the same rider's spells, the latest earlier one first, and of each other rider the best. The best is the spell with the fewest
/// flags, and of these the one with the least probability of the fault asked for: the most extreme value of a measure is not the best one.
/// </summary>
internal sealed class BesideChoices
{
    private const int MostOthers = 8;
    private readonly ILookup<string, RiddenSpell> _ofRider;
    private readonly Dictionary<(SpellKey, Fault), double> _probability;
    private readonly Dictionary<SpellKey, int> _flags;

    internal BesideChoices(IReadOnlyList<RiddenSpell> spells, IReadOnlyList<SpellScore> scores, IReadOnlyList<Flag> flags)
    {
        _ofRider = spells.Where(s => s.Rider is not null).ToLookup(s => s.Rider!, StringComparer.Ordinal);
        _probability = scores.ToDictionary(s => (s.Row.Key, s.Fault), s => s.Probability);
        _flags = flags.GroupBy(f => f.Score.Row.Key).ToDictionary(g => g.Key, g => g.Count());
    }

    /// <param name="mayShow">Whether a clip may be shown, by its key.</param>
    /// <returns>Only spells in which the measure was measured.</returns>
    internal IReadOnlyList<BesideSpell> Of(Question question, StrideMeasure measure, Func<string, bool> mayShow)
    {
        var own = question.Spell;
        bool Fits(RiddenSpell s) => s.Key != own.Key && mayShow(s.Provenance.ClipKey) && !SpellMean.Of(s, measure).IsMissing;
        BesideSpell Made(RiddenSpell s, BesideKind kind) => new(s, kind, SpellMean.Of(s, measure));
        var same = own.Rider is { } rider ? _ofRider[rider].Where(Fits).ToArray() : [];
        return
        [
            .. same.Where(s => s.SessionDate < own.SessionDate).OrderByDescending(s => s.SessionDate).ThenBy(s => s.Key).Select(s => Made(s, BesideKind.Earlier)),
            .. same.Where(s => !(s.SessionDate < own.SessionDate)).OrderBy(s => s.SessionDate).ThenBy(s => s.Key).Select(s => Made(s, BesideKind.Later)),
            .. _ofRider.Where(r => r.Key != own.Rider).Select(r => r.Where(Fits).OrderBy(s => RankOf(s, question.Fault)).FirstOrDefault()).OfType<RiddenSpell>()
                .OrderBy(s => RankOf(s, question.Fault)).Take(MostOthers).Select(s => Made(s, BesideKind.Best)),
        ];
    }

    private (int Flags, double Probability, SpellKey Key) RankOf(RiddenSpell spell, Fault? fault) =>
        (_flags.GetValueOrDefault(spell.Key), fault is { } f ? _probability.GetValueOrDefault((spell.Key, f)) : 0, spell.Key);
}
