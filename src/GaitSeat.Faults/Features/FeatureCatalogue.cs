using System.Security.Cryptography;
using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Faults.Features;

/// <summary>The features in the order of their vector: five for each stride measure, then those of the spell as a whole.</summary>
public static class FeatureCatalogue
{
    internal const int PerMeasure = 5;
    internal const int Mean = 0;
    internal const int Sd = 1;
    internal const int Trend = 2;
    internal const int ReinDifference = 3;
    internal const int FromUsual = 4;

    /// <summary>
    /// Measures that exist without a scale, so that a clip without a stature is judged by the same model; centimetre twins say the same
    /// twice. <see cref="StrideMeasure.SitImpact"/> has no twin and is missing there.
    /// </summary>
    public static IReadOnlyList<StrideMeasure> Measures { get; } =
    [
        StrideMeasure.StrideDuration, StrideMeasure.RiseHeightPctLeg, StrideMeasure.OverStirrupRisePctLeg, StrideMeasure.TimeAloft, StrideMeasure.SitImpact,
        StrideMeasure.ThighAngleSit, StrideMeasure.ThighAngleTop, StrideMeasure.ShankAngleSit, StrideMeasure.KneeAngleSit, StrideMeasure.KneeAngleTop,
        StrideMeasure.TrunkLeanSit, StrideMeasure.TrunkLeanTop, StrideMeasure.FootPitchSit, StrideMeasure.StirrupDriftSwingPctLeg,
        StrideMeasure.StirrupDriftOffsetPctLeg, StrideMeasure.StirrupLengthIndex, StrideMeasure.EarOffsetPctLeg, StrideMeasure.ShoulderOffsetPctLeg,
        StrideMeasure.HeelOffsetPctLeg, StrideMeasure.HandTravelPctLeg,
    ];

    public static IReadOnlyList<FeatureDefinition> All { get; } = [.. Measures.SelectMany(OfMeasure), .. SpellFeatures.All.Select(f => f.Definition)];

    /// <summary>Names a layout of the vector and its meaning; a model of another one must not be used.</summary>
    public static string SchemaHash { get; } = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', All))));

    /// <summary>Place of a measure's feature in the vector.</summary>
    internal static int IndexOf(StrideMeasure measure, int kind)
    {
        for (var i = 0; i < Measures.Count; i++)
            if (Measures[i] == measure) return i * PerMeasure + kind;
        throw new ArgumentOutOfRangeException(nameof(measure), measure, "No feature is made of it.");
    }

    private static IEnumerable<FeatureDefinition> OfMeasure(StrideMeasure measure)
    {
        var (column, unit) = (MeasureCatalogue.Get(measure).Column, MeasureCatalogue.Get(measure).Unit);
        FeatureDefinition Make(string suffix, string itsUnit, string definition, string missing) => new(column + suffix, column, itsUnit, definition, missing);
        return
        [
            Make("_mean", unit, $"Mean of `{column}` over the spell's trusted strides.", "No trusted stride has a value."),
            Make("_sd", unit, $"Sample standard deviation of `{column}` over the spell's trusted strides.", "Fewer than two have a value."),
            Make("_trend", unit + " per stride", $"Least-squares slope of `{column}` against the stride's number.", "Fewer than three have a value."),
            Make("_rein_diff", unit, $"Mean of `{column}` less the mean of the rider's spells on the other rein.", "Rein or rider is not known, or there is no spell on the other rein."),
            Make("_from_usual", unit, $"Mean of `{column}` less the median over the rider's spells in other clips.", "The rider is not known or has too few spells in other clips."),
        ];
    }
}
