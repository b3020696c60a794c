using GaitSeat.Faults.Features;
using GaitSeat.Faults.Training;
using GaitSeat.Model;

namespace GaitSeat.Faults.Evaluation;

/// <summary>The figures for parts of the spells: a model may do well on the whole and ill by some.</summary>
internal static class Slices
{
    private const string Unknown = "not known";

    internal static IReadOnlyList<Slice> Of(IReadOnlyList<LabelledSpell> spells, double[] probabilities, EvaluationSettings settings)
    {
        var parts = Ways(spells, settings).SelectMany(way => Enumerable.Range(0, spells.Count).GroupBy(i => way.Value(spells[i].Row.Spell)).Select(g => (way.By, g.Key, Spells: g.ToArray())));
        return [.. parts.Where(p => p.Spells.Length >= settings.SliceSpells).OrderBy(p => p.By, StringComparer.Ordinal).ThenBy(p => p.Key, StringComparer.Ordinal).Select(p => Make(p.By, p.Key, p.Spells, spells, probabilities))];
    }

    private static Slice Make(string by, string value, int[] part, IReadOnlyList<LabelledSpell> spells, double[] probabilities)
    {
        var isThere = part.Select(i => spells[i].IsThere).ToArray();
        var said = part.Select(i => probabilities[i]).ToArray();
        return new(by, value, part.Length, isThere.Count(t => t), new Ranking(said, isThere).AveragePrecision(), Calibration.Brier(said, isThere));
    }

    private static IEnumerable<(string By, Func<RiddenSpell, string> Value)> Ways(IReadOnlyList<LabelledSpell> spells, EvaluationSettings settings) =>
    [
        ("rider", s => s.Rider ?? Unknown),
        ("horse", s => s.Horse ?? Unknown),
        ("rein", s => s.Rein ?? Unknown),
        ("facing", s => s.Spell.Facing.ToTerm() ?? Unknown),
        ("rider in the picture", s => Part(s, StrideMeasure.RiderHeight, settings.FarRiderPx, "px")),
        ("turned out of the picture", s => Part(s, StrideMeasure.ViewYaw, settings.TurnedDeg, "deg")),
        .. spells.SelectMany(s => s.Row.Spell.Circumstances.Keys).Distinct(StringComparer.Ordinal)
            .Select(c => (c, (Func<RiddenSpell, string>)(s => s.Circumstances.GetValueOrDefault(c, Unknown)))),
    ];

    private static string Part(RiddenSpell spell, StrideMeasure measure, double limit, string unit)
    {
        var mean = MeasureSeries.Of(spell.Strides, measure).Mean;
        return double.IsNaN(mean) ? Unknown : FormattableString.Invariant($"{(mean < limit ? "below" : "from")} {limit:0} {unit}");
    }
}
