using GaitSeat.Model;

namespace GaitSeat.Faults.Tests;

/// <summary>Made-up spells of rising trot: an unremarkable rider, to be changed one measure at a time.</summary>
internal static class Rides
{
    public const double StrideSeconds = 0.72;

    /// <summary>A flat-work seat as common practice has it: heel under the hip, thigh at 45 deg, quiet leg and hand; leg 80 cm.</summary>
    public static MeasureSet CleanMeasures()
    {
        var m = new MeasureSet();
        m[StrideMeasure.StrideDuration] = new(StrideSeconds, 0.005);
        m[StrideMeasure.SitImpact] = new(35, 4);
        m[StrideMeasure.ThighAngleSit] = new(45, 1);
        m[StrideMeasure.KneeAngleSit] = new(118, 2);
        m[StrideMeasure.TrunkLeanSit] = new(5, 1);
        m[StrideMeasure.FootPitchSit] = new(8, 2);
        Length(m, StrideMeasure.RiseHeightCm, StrideMeasure.RiseHeightPctLeg, 10, 0.5);
        Length(m, StrideMeasure.StirrupDriftSwingCm, StrideMeasure.StirrupDriftSwingPctLeg, 3, 0.5);
        Length(m, StrideMeasure.StirrupDriftOffsetCm, StrideMeasure.StirrupDriftOffsetPctLeg, 12, 1);
        Length(m, StrideMeasure.HeelOffsetCm, StrideMeasure.HeelOffsetPctLeg, -3, 1);
        Length(m, StrideMeasure.HandTravelCm, StrideMeasure.HandTravelPctLeg, 1.5, 0.3);
        return m;
    }

    public static void Length(MeasureSet m, StrideMeasure cm, StrideMeasure pctLeg, double valueCm, double errorCm)
    {
        const double LegCm = 80;
        m[cm] = new(valueCm, errorCm);
        m[pctLeg] = new(100 * valueCm / LegCm, 100 * errorCm / LegCm);
    }

    public static Spell Spell(Gait gait = Gait.RisingTrot, int number = 1, int strides = 8) =>
        new(number, gait, Facing.Right, 0, strides * StrideSeconds, 0.95, 2.7, 8, 10, strides, 0, Measured.Missing, 1);

    public static Stride[] Strides(int count, Action<MeasureSet, int>? change = null, int spell = 1) =>
        [.. Enumerable.Range(0, count).Select(i =>
        {
            var m = CleanMeasures();
            change?.Invoke(m, i);
            var start = i * StrideSeconds;
            return new Stride(spell, i + 1, Facing.Right, start, start + StrideSeconds / 2, start + StrideSeconds, 0.95, "good", m);
        })];

    public static IReadOnlyList<Finding> Find(Stride[] strides, RuleSettings? settings = null) =>
        RuleFindings.Find([Spell(strides: strides.Length)], strides, settings ?? new());

    /// <summary>Takes the scale away: every measure that needs centimetres is missing.</summary>
    public static void Unscale(MeasureSet m)
    {
        foreach (var definition in MeasureCatalogue.All)
        {
            if (definition.Unit is "cm" or "cm/s") m[definition.Measure] = Measured.Missing;
        }
    }
}
