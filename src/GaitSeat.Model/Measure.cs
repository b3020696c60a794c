namespace GaitSeat.Model;

/// <summary>A measured value with its standard error, in the unit of its column. Missing is NaN, written as null, never zero.</summary>
public readonly record struct Measured(double Value, double StandardError)
{
    public static Measured Missing => new(double.NaN, double.NaN);

    public bool IsMissing => double.IsNaN(Value);

    /// <summary>Half width of the 95 % interval (normal, 1.96 standard errors).</summary>
    public double HalfWidth95 => 1.959964 * StandardError;
}

/// <summary>The per-stride measures. Names, units and definitions stand in <see cref="MeasureCatalogue"/>.</summary>
public enum StrideMeasure
{
    StrideDuration,
    RiseHeightCm,
    RiseHeightPctLeg,
    OverStirrupRiseCm,
    OverStirrupRisePctLeg,
    TimeAloft,
    SitImpact,
    ThighAngleSit,
    ThighAngleTop,
    ShankAngleSit,
    KneeAngleSit,
    KneeAngleTop,
    TrunkLeanSit,
    TrunkLeanTop,
    FootPitchSit,
    StirrupDriftSwingCm,
    StirrupDriftSwingPctLeg,
    StirrupDriftOffsetCm,
    StirrupDriftOffsetPctLeg,
    LeatherSwing,
    StirrupLengthIndex,
    EarOffsetCm,
    EarOffsetPctLeg,
    ShoulderOffsetCm,
    ShoulderOffsetPctLeg,
    HeelOffsetCm,
    HeelOffsetPctLeg,
    HandTravelCm,
    HandTravelPctLeg,
    Scale,
    ViewYaw,
    RiderHeight,
}

/// <summary>One line of the data dictionary.</summary>
/// <param name="Measure">Which measure.</param>
/// <param name="Column">Column name; its standard error is <c>Column + "_se"</c>.</param>
/// <param name="Unit">Unit of the value.</param>
/// <param name="Definition">One sentence, as in the vocabulary.</param>
public sealed record MeasureDefinition(StrideMeasure Measure, string Column, string Unit, string Definition)
{
    public string StandardErrorColumn => Column + "_se";
}

/// <summary>The per-stride measures in column order. To add a measure: a member of the enum, a line here, and its formula in GaitSeat.Motion.</summary>
public static class MeasureCatalogue
{
    public static IReadOnlyList<MeasureDefinition> All { get; } =
    [
        new(StrideMeasure.StrideDuration, "stride_duration_s", "s", "Time from sit instant to sit instant."),
        new(StrideMeasure.RiseHeightCm, "rise_height_cm", "cm", "Highest seat position in the stride minus the mean of the two bounding sit positions, in the trunk frame."),
        new(StrideMeasure.RiseHeightPctLeg, "rise_height_pct_leg", "% of leg length", "Rise height over thigh + shank length."),
        new(StrideMeasure.OverStirrupRiseCm, "over_stirrup_rise_cm", "cm", "Rise from the vertical hip-tread distance; needs no trunk anchor."),
        new(StrideMeasure.OverStirrupRisePctLeg, "over_stirrup_rise_pct_leg", "% of leg length", "Over-stirrup rise over thigh + shank length."),
        new(StrideMeasure.TimeAloft, "time_aloft_pct", "% of stride", "Share of the stride with the seat above half the rise height."),
        new(StrideMeasure.SitImpact, "sit_impact_cm_s", "cm/s", "Greatest downward seat speed in the last 15 % of the stride."),
        new(StrideMeasure.ThighAngleSit, "thigh_angle_sit_deg", "deg", "Hip to knee against straight down, + knee forward; mean over 5 % of the stride on either side of the sit instant."),
        new(StrideMeasure.ThighAngleTop, "thigh_angle_top_deg", "deg", "Thigh angle around the top of the rise."),
        new(StrideMeasure.ShankAngleSit, "shank_angle_sit_deg", "deg", "Knee to ankle against straight down at the sit, + ankle forward of the knee."),
        new(StrideMeasure.KneeAngleSit, "knee_angle_sit_deg", "deg", "Interior angle hip-knee-ankle at the sit; 180 is a straight leg."),
        new(StrideMeasure.KneeAngleTop, "knee_angle_top_deg", "deg", "Interior angle hip-knee-ankle at the top."),
        new(StrideMeasure.TrunkLeanSit, "trunk_lean_sit_deg", "deg", "Hip to shoulder against straight up at the sit, + shoulder forward."),
        new(StrideMeasure.TrunkLeanTop, "trunk_lean_top_deg", "deg", "Trunk lean at the top."),
        new(StrideMeasure.FootPitchSit, "foot_pitch_sit_deg", "deg", "Heel to toe against horizontal at the sit, + toe above heel."),
        new(StrideMeasure.StirrupDriftSwingCm, "stirrup_drift_swing_cm", "cm", "Range of the tread's forward position in the trunk frame within the stride."),
        new(StrideMeasure.StirrupDriftSwingPctLeg, "stirrup_drift_swing_pct_leg", "% of leg length", "Stirrup drift swing over thigh + shank length."),
        new(StrideMeasure.StirrupDriftOffsetCm, "stirrup_drift_offset_cm", "cm", "The tread's forward position minus the hip's at the sit, + foot ahead of the seat."),
        new(StrideMeasure.StirrupDriftOffsetPctLeg, "stirrup_drift_offset_pct_leg", "% of leg length", "Stirrup drift offset over thigh + shank length."),
        new(StrideMeasure.LeatherSwing, "leather_swing_deg", "deg", "The drift swing as an angle of the leather about its bar: 2 atan(swing / 2L)."),
        new(StrideMeasure.StirrupLengthIndex, "stirrup_length_index_pct", "% of leg length", "Vertical hip-tread distance at the sit over thigh + shank length."),
        new(StrideMeasure.EarOffsetCm, "ear_offset_cm", "cm", "Ear's horizontal distance from the plumb line through the hip at the sit, + forward."),
        new(StrideMeasure.EarOffsetPctLeg, "ear_offset_pct_leg", "% of leg length", "Ear offset over thigh + shank length."),
        new(StrideMeasure.ShoulderOffsetCm, "shoulder_offset_cm", "cm", "Shoulder's horizontal distance from the plumb line through the hip at the sit, + forward."),
        new(StrideMeasure.ShoulderOffsetPctLeg, "shoulder_offset_pct_leg", "% of leg length", "Shoulder offset over thigh + shank length."),
        new(StrideMeasure.HeelOffsetCm, "heel_offset_cm", "cm", "Heel's horizontal distance from the plumb line through the hip at the sit, + forward."),
        new(StrideMeasure.HeelOffsetPctLeg, "heel_offset_pct_leg", "% of leg length", "Heel offset over thigh + shank length."),
        new(StrideMeasure.HandTravelCm, "hand_travel_cm", "cm", "RMS distance of the wrist from its mean over the stride, in the trunk frame."),
        new(StrideMeasure.HandTravelPctLeg, "hand_travel_pct_leg", "% of leg length", "Hand travel over thigh + shank length."),
        new(StrideMeasure.Scale, "scale_cm_per_px", "cm/px", "Size of a pixel of the analysed picture at the rider."),
        new(StrideMeasure.ViewYaw, "view_yaw_deg", "deg", "How far the rider is turned out of the picture plane, unsigned."),
        new(StrideMeasure.RiderHeight, "rider_height_px", "px", "Height of the rider's box in the analysed picture."),
    ];

    public static MeasureDefinition Get(StrideMeasure measure) => All[(int)measure];
}

/// <summary>The measures of one stride, by <see cref="StrideMeasure"/>; what was not set is missing.</summary>
public sealed class MeasureSet
{
    private readonly Measured[] _values = new Measured[MeasureCatalogue.All.Count];

    public MeasureSet() => Array.Fill(_values, Measured.Missing);

    public Measured this[StrideMeasure measure]
    {
        get => _values[(int)measure];
        set => _values[(int)measure] = value;
    }
}
