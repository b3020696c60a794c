using GaitSeat.Model;

namespace GaitSeat.Store;

internal sealed record SpellRow(ClipRecord Clip, Spell Spell, SpellSummary Summary) : IClipRow;

/// <summary>One row a spell, of any gait.</summary>
internal static class SpellsTable
{
    internal const string Name = "spells";
    private const string NotMeasured = "Could not be measured.";
    private const string TooFew = "Fewer than two strides have a value.";

    internal static Table Table { get; } = new Table<SpellRow>(
        Name,
        "One row a spell: a continuous stretch of one gait, with the spread of each measure over its strides.",
        [
            .. SharedColumns.Clip<SpellRow>(),
            .. SharedColumns.Session<SpellRow>(),
            .. Place(),
            .. Bounce(),
            .. Regularity(),
            .. MeasureCatalogue.All.SelectMany(Measure),
            .. SharedColumns.Provenance<SpellRow>(),
        ],
        RowsOf);

    private static List<SpellRow> RowsOf(ClipRecord clip)
    {
        if (clip.Motion is not { } motion) return [];
        var strides = motion.Strides.ToLookup(s => s.SpellNumber);
        return [.. motion.Spells.Select(s => new SpellRow(clip, s, SpellSummary.Of([.. strides[s.Number]])))];
    }

    private static IEnumerable<Column<SpellRow>> Place() =>
    [
        Columns.Whole<SpellRow>("spell", "", "Number of the spell within the clip, from 1.", r => r.Spell.Number),
        Columns.Text<SpellRow>("gait", "`walk`, `rising_trot`, `sitting_trot`, `canter`, `halt` or `unknown`.", r => r.Spell.Gait.ToTerm()),
        Columns.Text<SpellRow>("facing", "Side of the picture the horse moves towards: `left` or `right`.", r => r.Spell.Facing.ToTerm(), "Not known."),
        Columns.Real<SpellRow>("start_s", "s", "Start of the spell, from the start of the video.", r => r.Spell.StartSeconds),
        Columns.Real<SpellRow>("end_s", "s", "End of the spell.", r => r.Spell.EndSeconds),
        Columns.Real<SpellRow>("confidence", "0..1", "How surely the gait is what it is called.", r => r.Spell.Confidence, "Not known."),
    ];

    private static IEnumerable<Column<SpellRow>> Bounce() =>
    [
        Columns.Real<SpellRow>("bounce_hz", "Hz", "Main frequency of the trunk's vertical motion.", r => r.Spell.BounceHz, "None was found."),
        Columns.Real<SpellRow>("bounce_cm", "cm", "Peak-to-peak vertical motion of the trunk.", r => r.Spell.BounceCm, "No scale, or none was found."),
        Columns.Real<SpellRow>("bounce_pct_leg", "% of leg length", "The same over thigh + shank length.", r => r.Spell.BouncePctLeg, "None was found."),
        Columns.Whole<SpellRow>("strides_kept", "strides", "Strides measured.", r => r.Spell.StridesKept),
        Columns.Whole<SpellRow>("strides_dropped", "strides", "Strides cut but left out; their reasons stand in `skipped`.", r => r.Spell.StridesDropped),
    ];

    private static IEnumerable<Column<SpellRow>> Regularity() =>
    [
        Columns.Real<SpellRow>("drift_creep_cm_per_stride", "cm/stride", "Slope over the spell of the tread's forward position at the sits.", r => r.Spell.DriftCreepCmPerStride.Value, NotMeasured),
        Columns.Real<SpellRow>("drift_creep_cm_per_stride_se", "cm/stride", "Standard error of `drift_creep_cm_per_stride`.", r => r.Spell.DriftCreepCmPerStride.StandardError, NotMeasured),
        Columns.Real<SpellRow>("stride_duration_cv_pct", "%", "Regularity: coefficient of variation of stride duration, as the stride cutter found it.", r => r.Spell.RegularityCvPct, "Fewer than three strides."),
    ];

    private static IEnumerable<Column<SpellRow>> Measure(MeasureDefinition m) =>
    [
        Columns.Real<SpellRow>(m.Column + "_mean", m.Unit, $"Mean of `{m.Column}` over the spell's strides.", r => r.Summary[m.Measure].Mean, "No stride has a value."),
        Columns.Real<SpellRow>(m.Column + "_sd", m.Unit, $"Sample standard deviation of `{m.Column}` over the spell's strides.", r => r.Summary[m.Measure].Sd, TooFew),
        Columns.Real<SpellRow>(m.Column + "_cv_pct", "%", $"Standard deviation of `{m.Column}` over the size of its mean; of little use where the mean is near 0.", r => r.Summary[m.Measure].CvPct, TooFew),
    ];
}
