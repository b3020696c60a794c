using GaitSeat.Faults.Flags;
using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>Which measure of a fault is drawn: the one its rule compares, learnt from the run's own findings.</summary>
internal sealed class MeasureChoice
{
    private readonly Dictionary<Fault, MeasureDefinition> _ofFault;
    private readonly Dictionary<string, MeasureDefinition> _byColumn = MeasureCatalogue.All.ToDictionary(m => m.Column, StringComparer.Ordinal);

    internal MeasureChoice(IEnumerable<SpellScore> scores) =>
        _ofFault = scores.Where(s => s.Rule is { } r && _byColumn.ContainsKey(r.Measure)).GroupBy(s => s.Fault)
            .ToDictionary(g => g.Key, g => _byColumn[g.GroupBy(s => s.Rule!.Measure).OrderByDescending(m => m.Count()).ThenBy(m => m.Key, StringComparer.Ordinal).First().Key]);

    /// <summary>The thigh angle at the sit where the fault is none of one measure, or was never found in this run.</summary>
    internal MeasureDefinition Of(Question question) =>
        question.Score?.Rule is { } rule && _byColumn.TryGetValue(rule.Measure, out var own) ? own
        : question.Fault is { } fault && _ofFault.TryGetValue(fault, out var usual) ? usual
        : MeasureCatalogue.Get(StrideMeasure.ThighAngleSit);
}
