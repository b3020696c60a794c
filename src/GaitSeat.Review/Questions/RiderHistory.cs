using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>One spell of a rider's history of a measure.</summary>
/// <param name="Mean">As <see cref="SpellMean"/> has it.</param>
internal sealed record HistoryPoint(SpellKey Spell, DateOnly Date, Measured Mean);

/// <summary>How a measure of one rider went over the days of the run.</summary>
internal sealed class RiderHistory(IEnumerable<RiddenSpell> spells)
{
    private readonly ILookup<string, RiddenSpell> _ofRider = spells.Where(s => s is { Rider: not null, SessionDate: not null }).ToLookup(s => s.Rider!, StringComparer.Ordinal);

    /// <returns>By day; empty where the sheet names no rider or no day.</returns>
    internal IReadOnlyList<HistoryPoint> Of(RiddenSpell spell, StrideMeasure measure) => spell.Rider is not { } rider
        ? []
        : [.. _ofRider[rider].Select(s => new HistoryPoint(s.Key, s.SessionDate!.Value, SpellMean.Of(s, measure))).Where(p => !p.Mean.IsMissing).OrderBy(p => p.Date).ThenBy(p => p.Spell)];
}
