using GaitSeat.Model;

namespace GaitSeat.Pipeline.Pupil;

/// <summary>A measure of one rider on one day.</summary>
/// <param name="Value">
/// Mean over the trusted strides. Errors of the strides are mostly shared by a day's clips (scale, turn, where a model puts a joint) and do not shrink with their number, so their median is a
/// floor under the spread from stride to stride: <c>se² = median(se_i)² + sd²/n</c>.
/// </param>
internal sealed record DayMean(DateOnly Day, Measured Value, int Strides)
{
    public static IReadOnlyList<DayMean> Of(IEnumerable<RiddenSpell> spells, StrideMeasure measure) =>
    [
        .. spells.Where(s => s.SessionDate is not null).GroupBy(s => s.SessionDate!.Value).OrderBy(d => d.Key)
            .Select(d => (Day: d.Key, Values: d.SelectMany(s => s.Strides).Where(s => s.IsTrusted).Select(s => s.Measures[measure]).Where(m => !m.IsMissing).ToArray()))
            .Where(d => d.Values.Length > 0)
            .Select(d => new DayMean(d.Day, MeanOf(d.Values), d.Values.Length)),
    ];

    private static Measured MeanOf(Measured[] strides)
    {
        var (values, errors) = (strides.Select(s => s.Value).ToArray(), strides.Select(s => s.StandardError).Where(double.IsFinite).Order().ToArray());
        var mean = values.Average();
        var spread = values.Length < 2 ? 0 : values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1) / values.Length;
        var floor = errors.Length == 0 ? double.NaN : (errors[(errors.Length - 1) / 2] + errors[errors.Length / 2]) / 2;
        return new(mean, Math.Sqrt(floor * floor + spread));
    }
}
