using GaitSeat.Model;

namespace GaitSeat.Faults.Features;

/// <summary>What a spell says of itself; the features that need the rider's other spells are still missing.</summary>
internal sealed record OwnFeatures(RiddenSpell Spell, int Trusted, double[] Values)
{
    internal static OwnFeatures Of(RiddenSpell spell)
    {
        var trusted = spell.Strides.Where(s => s.IsTrusted).ToArray();
        var values = new double[FeatureCatalogue.All.Count];
        Array.Fill(values, double.NaN);
        for (var m = 0; m < FeatureCatalogue.Measures.Count; m++)
        {
            var series = MeasureSeries.Of(trusted, FeatureCatalogue.Measures[m]);
            var at = m * FeatureCatalogue.PerMeasure;
            values[at + FeatureCatalogue.Mean] = series.Mean;
            values[at + FeatureCatalogue.Sd] = series.Sd;
            values[at + FeatureCatalogue.Trend] = series.TrendPerStride;
        }

        var rest = FeatureCatalogue.Measures.Count * FeatureCatalogue.PerMeasure;
        for (var i = 0; i < SpellFeatures.All.Count; i++) values[rest + i] = SpellFeatures.All[i].Get(spell, trusted);
        return new(spell, trusted.Length, values);
    }
}
