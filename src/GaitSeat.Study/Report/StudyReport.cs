using GaitSeat.Model;
using GaitSeat.Study.Answers;
using GaitSeat.Study.Report.Sections;

namespace GaitSeat.Study.Report;

/// <summary>Writes a report folder: report.html (one page, whole in itself), report.md, numbers.csv and pictures as PNG and SVG.</summary>
public static class StudyReport
{
    public const string HtmlName = "report.html", MarkdownName = "report.md";

    public static void Write(ReportInput input, string folder)
    {
        ArgumentNullException.ThrowIfNull(input);
        Directory.CreateDirectory(folder);
        var report = new ReportBuilder(folder, input.DataNote);
        if (input.DataNote.Length > 0) report.Add(new Warning(input.DataNote));
        Lead(report, Summary(input.Results));
        foreach (var (result, i) in input.Results.Select((r, i) => (r, i))) Questions.Write(report, result, i + 1, input.Results.Count);
        LimitsSection.Write(report, input.Results);
        if (input.Data is { } data) DataSection.Write(report, input, data);
        ProvenanceSection.Write(report, input);
        var page = new ReportPage(input.Title, report.Blocks);
        AtomicFile.WriteText(Path.Combine(folder, NumbersFile.FileName), NumbersFile.Write(report.Numbers));
        AtomicFile.WriteText(Path.Combine(folder, MarkdownName), MarkdownPage.Write(page));
        AtomicFile.WriteText(Path.Combine(folder, HtmlName), HtmlPage.Write(page, folder));
    }

    /// <summary>What was found in a line or two each, for the head of a report and for a terminal.</summary>
    public static IReadOnlyList<string> Summary(IReadOnlyList<StudyResult> results) => [.. results.SelectMany(r => r.Answers.Select(a => SummaryLine.Of(r.Study, a)).Concat(r.Plans.Select(SummaryLine.Of)))];

    private static void Lead(ReportBuilder report, IReadOnlyList<string> lines)
    {
        report.Add(new BulletList([.. lines.Take(MostInLead)]));
        if (lines.Count > MostInLead) report.Add(new Paragraph("More below."));
    }

    private const int MostInLead = 6;
}
