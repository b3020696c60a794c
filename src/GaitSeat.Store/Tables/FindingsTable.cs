using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Store;

internal sealed record FindingRow(ClipRecord Clip, Finding Finding) : IClipRow;

/// <summary>One row a finding: a prompt for the coach's eye.</summary>
internal static class FindingsTable
{
    internal const string Name = "findings";

    internal static Table Table { get; } = new Table<FindingRow>(
        Name,
        "One row a finding: what was measured in a spell, against what, how sure. A prompt for the coach's eye, not a verdict.",
        [
            .. SharedColumns.Clip<FindingRow>(),
            .. SharedColumns.Session<FindingRow>(),
            .. What(),
            .. Where(),
            .. SharedColumns.Provenance<FindingRow>(),
        ],
        clip => [.. clip.Findings.Select(f => new FindingRow(clip, f))]);

    private static IEnumerable<Column<FindingRow>> What() =>
    [
        Columns.Whole<FindingRow>("spell", "", "Number of the spell within the clip, from 1.", r => r.Finding.SpellNumber),
        Columns.Text<FindingRow>("fault", "The fault, a term of the trade: " + Faults() + ".", r => r.Finding.Fault.ToTerm()),
        Columns.Text<FindingRow>("measure", "Name of the measure that was compared.", r => r.Finding.Measure),
        Columns.Real<FindingRow>("value", "see `unit`", "The spell's mean of the measure.", r => r.Finding.Value.Value, "Could not be measured."),
        Columns.Real<FindingRow>("value_se", "see `unit`", "Standard error of `value`.", r => r.Finding.Value.StandardError, "Not known."),
        Columns.Real<FindingRow>("threshold", "see `unit`", "The limit it was held against.", r => r.Finding.Threshold, "Not one number."),
        Columns.Text<FindingRow>("unit", "Unit of value and threshold.", r => r.Finding.Unit),
        Columns.Real<FindingRow>("probability", "0..1", "Probability that the true value is past the threshold, given the standard error.", r => r.Finding.ProbabilityPastThreshold, "The standard error is not known."),
        Columns.Text<FindingRow>("source", "Where the threshold comes from.", r => r.Finding.Source),
    ];

    private static IEnumerable<Column<FindingRow>> Where() =>
    [
        Columns.Real<FindingRow>("start_s", "s", "Where to begin to look, from the start of the video.", r => r.Finding.StartSeconds),
        Columns.Real<FindingRow>("end_s", "s", "Where to stop.", r => r.Finding.EndSeconds),
        Columns.Text<FindingRow>("stride_numbers", "Strides of the spell that show it, joined by commas; empty where none stands out.", r => Numbers(r.Finding)),
        Columns.Text<FindingRow>("summary", "One plain line for the coach.", r => r.Finding.Summary),
    ];

    private static string Faults() => string.Join(", ", Enum.GetValues<Fault>().Select(f => $"`{f.ToTerm()}`"));

    private static string Numbers(Finding finding) =>
        string.Join(',', finding.StrideNumbers.Select(n => n.ToString(CultureInfo.InvariantCulture)));
}
