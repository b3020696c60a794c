using GaitSeat.Faults.Features;
using GaitSeat.Faults.Rules;
using GaitSeat.Model;

namespace GaitSeat.Faults.Flags;

/// <summary>Features in plain words: "thigh 56 ± 2 deg at the sit, 11 above this rider's usual".</summary>
internal static class DriverWords
{
    private static readonly Dictionary<StrideMeasure, (string What, string When)> Names = new()
    {
        [StrideMeasure.StrideDuration] = ("stride", ""),
        [StrideMeasure.RiseHeightPctLeg] = ("rise", ""),
        [StrideMeasure.OverStirrupRisePctLeg] = ("rise over the stirrup", ""),
        [StrideMeasure.TimeAloft] = ("aloft", ""),
        [StrideMeasure.SitImpact] = ("seat lands at", ""),
        [StrideMeasure.ThighAngleSit] = ("thigh", " at the sit"),
        [StrideMeasure.ThighAngleTop] = ("thigh", " at the top"),
        [StrideMeasure.ShankAngleSit] = ("lower leg", " ahead of the knee at the sit"),
        [StrideMeasure.KneeAngleSit] = ("knee", " at the sit"),
        [StrideMeasure.KneeAngleTop] = ("knee", " at the top"),
        [StrideMeasure.TrunkLeanSit] = ("trunk lean", " at the sit"),
        [StrideMeasure.TrunkLeanTop] = ("trunk lean", " at the top"),
        [StrideMeasure.FootPitchSit] = ("toe above heel", " at the sit"),
        [StrideMeasure.StirrupDriftSwingPctLeg] = ("foot travels", " within the stride"),
        [StrideMeasure.StirrupDriftOffsetPctLeg] = ("foot", " ahead of the hip at the sit"),
        [StrideMeasure.StirrupLengthIndex] = ("stirrup length", ""),
        [StrideMeasure.EarOffsetPctLeg] = ("ear", " ahead of the plumb line"),
        [StrideMeasure.ShoulderOffsetPctLeg] = ("shoulder", " ahead of the plumb line"),
        [StrideMeasure.HeelOffsetPctLeg] = ("heel", " ahead of the plumb line"),
        [StrideMeasure.HandTravelPctLeg] = ("hand travels", ""),
    };

    private const string Ahead = " ahead of";

    /// <param name="features">Places of the family's features.</param>
    /// <param name="leading">The one that carries most; it is said even where the plain value would do.</param>
    internal static string Of(FeatureRow row, int[] features, int leading)
    {
        var measures = FeatureCatalogue.Measures.Count * FeatureCatalogue.PerMeasure;
        if (features[0] >= measures) return OfSpell(row, leading);
        var measure = FeatureCatalogue.Measures[features[0] / FeatureCatalogue.PerMeasure];
        var mean = SpellMean.Of([.. row.Spell.Strides.Where(s => s.IsTrusted && SpellStrides.Has(s, measure)).Select(s => s.Measures[measure])]);
        var (what, when) = Names[measure];
        if (mean.Value < 0 && when.Contains(Ahead, StringComparison.Ordinal)) (mean, when) = (mean with { Value = -mean.Value }, when.Replace(Ahead, " behind", StringComparison.Ordinal));
        var value = mean.IsMissing ? $"{what} not seen{when}" : $"{what} {Words.WithInterval(mean)} {Words.Unit(measure)}{when}";
        var usual = row.Values[features[0] + FeatureCatalogue.FromUsual];
        return value + (Math.Abs(usual) > mean.HalfWidth95 ? Names[measure].When.Contains(Ahead, StringComparison.Ordinal) ? Against(usual, "further forward than", "further back than", "this rider's usual") : Against(usual, "above", "below", "this rider's usual") : "") + (leading >= measures ? "; " + OfSpell(row, leading) : Extra(row, leading));
    }

    private static string Extra(FeatureRow row, int leading) => (leading % FeatureCatalogue.PerMeasure, row.Values[leading]) switch
    {
        (FeatureCatalogue.Sd, var sd) when double.IsFinite(sd) => $", varying by {Number(sd)} from stride to stride",
        (FeatureCatalogue.Trend, var slope) when double.IsFinite(slope) => $", {(slope > 0 ? "growing" : "falling")} by {Number(Math.Abs(slope))} a stride",
        (FeatureCatalogue.ReinDifference, var difference) when double.IsFinite(difference) => Against(difference, "more than", "less than", "on the other rein"),
        _ => "",
    };

    private static string Against(double difference, string above, string below, string what) => $", {Number(Math.Abs(difference))} {(difference > 0 ? above : below)} {what}";

    private static string OfSpell(FeatureRow row, int feature)
    {
        var definition = FeatureCatalogue.All[feature];
        var value = row.Values[feature];
        return double.IsFinite(value) ? $"{definition.Name.Replace('_', ' ')} {Number(value)}" : $"{definition.Name.Replace('_', ' ')} not known";
    }

    private static string Number(double value) => Words.Text(Math.Abs(value) < 1 ? (FormattableString)$"{value:0.##}" : Math.Abs(value) < 10 ? (FormattableString)$"{value:0.#}" : $"{value:0}");
}
