using GaitSeat.Model;

namespace GaitSeat.Store;

internal sealed record StrideRow(ClipRecord Clip, Stride Stride, Gait Gait) : IClipRow;

/// <summary>One row a stride: the heart of the dataset.</summary>
internal static class StridesTable
{
    internal const string Name = "strides";

    internal static Table Table { get; } = new Table<StrideRow>(
        Name,
        "One row a stride of rising trot, from sit instant to sit instant.",
        [
            .. SharedColumns.Clip<StrideRow>(),
            .. SharedColumns.Session<StrideRow>(),
            .. Place(),
            .. MeasureCatalogue.All.SelectMany(Measure),
            Columns.Text<StrideRow>("quality", "`good`, or the named reasons for care joined by `+`.", r => r.Stride.Quality),
            Columns.Real<StrideRow>("confidence", "0..1", "How sure the stride's boundaries are.", r => r.Stride.Confidence, "Not known."),
            .. SharedColumns.Provenance<StrideRow>(),
        ],
        RowsOf);

    private static List<StrideRow> RowsOf(ClipRecord clip)
    {
        if (clip.Motion is not { } motion) return [];
        var gaits = motion.Spells.ToDictionary(s => s.Number, s => s.Gait);
        return [.. motion.Strides.Select(s => new StrideRow(clip, s, gaits.GetValueOrDefault(s.SpellNumber)))];
    }

    private static IEnumerable<Column<StrideRow>> Place() =>
    [
        Columns.Text<StrideRow>("facing", "Side of the picture the horse moves towards: `left` or `right`.", r => r.Stride.Facing.ToTerm(), "Not known."),
        Columns.Whole<StrideRow>("spell", "", "Number of the spell within the clip, from 1.", r => r.Stride.SpellNumber),
        Columns.Whole<StrideRow>("stride", "", "Number of the stride within the spell, from 1, dropped ones counted too.", r => r.Stride.Number),
        Columns.Text<StrideRow>("gait", "Gait of the spell.", r => r.Gait.ToTerm()),
        Columns.Real<StrideRow>("start_s", "s", "Sit instant that begins the stride, from the start of the video.", r => r.Stride.StartSeconds),
        Columns.Real<StrideRow>("top_s", "s", "Instant of the highest seat position.", r => r.Stride.TopSeconds, "Not found."),
        Columns.Real<StrideRow>("end_s", "s", "Sit instant that ends the stride.", r => r.Stride.EndSeconds),
    ];

    private static IEnumerable<Column<StrideRow>> Measure(MeasureDefinition m) =>
    [
        Columns.Real<StrideRow>(m.Column, m.Unit, m.Definition, r => r.Stride.Measures[m.Measure].Value, "Could not be measured."),
        Columns.Real<StrideRow>(m.StandardErrorColumn, m.Unit, $"Standard error of `{m.Column}`.", r => StandardError(r.Stride.Measures[m.Measure]), "Not known."),
    ];

    /// <summary>No error without a value: a lone standard error would be read as one of something.</summary>
    private static double StandardError(Measured m) => m.IsMissing ? double.NaN : m.StandardError;
}
