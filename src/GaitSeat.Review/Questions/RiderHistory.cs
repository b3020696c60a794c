using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>One spell of a rider's history of a measure.</summary>
/// <param name="Mean">Mean over the trusted strides; its error is from stride to stride alone, not known below two strides.</param>
internal sealed record HistoryPoint(SpellKey Spell, DateOnly Date, Measured Mean, int Strides);

/// <summary>How a measure of one rider went over the days of the run.</summary>
internal sealed class RiderHistory(IEnumerable<RiddenSpell> spells)
{
    private readonly ILookup<string, RiddenSpell> _ofRider = spells.Where(s => s is { Rider: not null, SessionDate: not null }).ToLookup(s => s.Rider!, StringComparer.Ordinal);

    /// <returns>By day; empty where the sheet names no rider or no day.</returns>
    internal IReadOnlyList<HistoryPoint> Of(RiddenSpell spell, StrideMeasure measure) => spell.Rider is not { } rider
        ? []
        : [.. _ofRider[rider].Select(s => Point(s, measure)).Where(p => !p.Mean.IsMissing).OrderBy(p => p.Date).ThenBy(p => p.Spell)];

    private static HistoryPoint Point(RiddenSpell spell, StrideMeasure measure)
    {
        double[] values = [.. spell.Strides.Where(s => s.IsTrusted).Select(s => s.Measures[measure].Value).Where(double.IsFinite)];
        return new(spell.Key, spell.SessionDate!.Value, MeanOf(values), values.Length);
    }

    private static Measured MeanOf(double[] values)
    {
        if (values.Length == 0) return Measured.Missing;
        var mean = values.Average();
        return new(mean, values.Length < 2 ? double.NaN : Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1) / values.Length));
    }
}
