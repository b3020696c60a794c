using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>A measure over a spell.</summary>
internal static class SpellMean
{
    /// <returns>Mean over the trusted strides; its error is from stride to stride alone, not known below two strides.</returns>
    internal static Measured Of(RiddenSpell spell, StrideMeasure measure) => Of(ValuesOf(spell, measure));

    /// <summary>How many trusted strides have the measure.</summary>
    internal static int Count(RiddenSpell spell, StrideMeasure measure) => ValuesOf(spell, measure).Length;

    internal static Measured Of(double[] values)
    {
        if (values.Length == 0) return Measured.Missing;
        var mean = values.Average();
        return new(mean, values.Length < 2 ? double.NaN : Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1) / values.Length));
    }

    private static double[] ValuesOf(RiddenSpell spell, StrideMeasure measure) => [.. spell.Strides.Where(s => s.IsTrusted).Select(s => s.Measures[measure].Value).Where(double.IsFinite)];
}
