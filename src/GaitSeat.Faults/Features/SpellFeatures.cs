using GaitSeat.Model;

namespace GaitSeat.Faults.Features;

/// <summary>Features of a spell as a whole: rhythm, and how well it could be seen.</summary>
internal static class SpellFeatures
{
    private const double Percent = 100;

    internal static IReadOnlyList<(FeatureDefinition Definition, Func<RiddenSpell, IReadOnlyList<Stride>, double> Get)> All { get; } =
    [
        (new("bounce_hz", "bounce_hz", "Hz", "Main frequency of the trunk's vertical motion.", "None was found."), (s, _) => s.Spell.BounceHz),
        (new("stride_duration_cv_pct", "stride_duration_s", "%", "Coefficient of variation of stride duration.", "Fewer than three strides."), (s, _) => s.Spell.RegularityCvPct),
        (new("drift_creep_cm_per_stride", "drift_creep_cm_per_stride", "cm/stride", "Slope over the spell of the tread's forward position at the sits.", "No scale, or too few strides."), (s, _) => s.Spell.DriftCreepCmPerStride.Value),
        (new("trusted_strides", "quality", "strides", "Strides whose values and errors stand.", ""), (_, trusted) => trusted.Count),
        (new("left_out_pct", "quality", "%", "Share of the spell's strides that were dropped or are not trusted.", "The spell has no stride."), (s, trusted) => LeftOutPct(s, trusted.Count)),
        (new("gait_confidence", "quality", "0..1", "How surely the gait is what it is called.", "Not known."), (s, _) => s.Spell.Confidence),
        (new("view_yaw_deg_mean", "quality", "deg", "Mean turn of the rider out of the picture plane.", "Not seen."), (_, trusted) => MeasureSeries.Of(trusted, StrideMeasure.ViewYaw).Mean),
    ];

    private static double LeftOutPct(RiddenSpell s, int trusted)
    {
        var cut = s.Strides.Count + s.Spell.StridesDropped;
        return cut == 0 ? double.NaN : Percent * (cut - trusted) / cut;
    }
}
