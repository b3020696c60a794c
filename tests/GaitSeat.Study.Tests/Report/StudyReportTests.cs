using System.Text.RegularExpressions;
using System.Xml.Linq;
using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;
using GaitSeat.Study.Report;
using GaitSeat.Study.Tests.Answers;

namespace GaitSeat.Study.Tests.Report;

/// <summary>A report of every kind of question on the simulated season, on disk.</summary>
public sealed class StudyReportTests : IDisposable
{
    private const string Note = "Simulated riders.";

    private static readonly StudySettings[] Questions =
    [
        Season.Study with { Exploratory = ["coach_cm"], MeasurementError = CarriedError.None, ExposureErrorSd = 1, Simex = new() { Replicates = 2 }, OtherSteps = ["2.5"] },
        Season.Study with { Kind = StudyKind.BeforeAfter, After = "stirrup_hole rises", Session = "term", Outcomes = ["rise_height_cm"], Question = "What does a change do?" },
        Season.Study with { Kind = StudyKind.Agreement, Comparator = "coach_cm", Outcomes = ["rise_height_cm"], Question = "Does the coach agree?" },
        Season.Study with { Kind = StudyKind.Reliability, Outcomes = ["rise_height_cm", "noise_pct"], Bootstrap = new() { Replicates = 20 }, Question = "How reliable?" },
        Season.Study with { Outcomes = ["rise_height_cm"], Filters = ["stirrup_hole > 9"], Question = "Who rides at <b>ten</b> | more?" },
        new() { Kind = StudyKind.Planning, Question = "How many riders?", RiderCounts = ["5", "8"], StrideCounts = ["3", "6"], WantedHalfWidth = 5, Power = new() { Simulations = 20 }, Plan = new() { Horses = 0 } },
    ];

    private static readonly IReadOnlyList<StudyResult> Results = StudyRun.Of(Questions, _ => Season.Table);

    private readonly string _folder = Directory.CreateTempSubdirectory("study-report").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Page_AsksForNothingFromElsewhere_AndHoldsItsPictures()
    {
        var html = Written(StudyReport.HtmlName);
        Assert.DoesNotMatch(new Regex("""(src|href)="(?!data:)"""), html);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.Equal(Directory.GetFiles(Path.Combine(_folder, "pictures"), "*.png").Length, Regex.Count(html, "data:image/png;base64,"));
        Assert.Contains("Who rides at &lt;b&gt;ten&lt;/b&gt; | more?", html, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryPicture_StandsInMarkdownWithItsDrawing()
    {
        var pictures = Regex.Matches(Written(StudyReport.MarkdownName), @"\((pictures/[^)]+)\.png\)").Select(m => m.Groups[1].Value).ToArray();
        foreach (var kind in (string[])["dose", "riders", "caterpillar", "checks", "forest", "agreement", "icc", "plans", "flow", "left-out"])
            Assert.Contains(pictures, p => p.EndsWith(kind, StringComparison.Ordinal));
        foreach (var picture in pictures)
        {
            var svg = XDocument.Load(Path.Combine(_folder, picture + ".svg"));
            Assert.Contains(Note, string.Concat(svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Report_SaysWhatCannotBeConcluded()
    {
        var text = Written(StudyReport.MarkdownName);
        foreach (var said in (string[])["Observational", "confounding", "Not advice to lengthen or shorten anyone's stirrups", "exploratory", "helmet", "left out by chance", "Benjamini", Note])
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Fact]
    public void QuestionWithoutRows_SaysWhyAndStopsNoOther()
    {
        var text = Written(StudyReport.MarkdownName);
        Assert.Contains("No numbers: no rows are left after 'not stirrup\\_hole > 9'", text, StringComparison.Ordinal);
        Assert.Contains("How many riders?", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Provenance_HoldsFileDataAndCommand()
    {
        var text = Written(StudyReport.MarkdownName);
        foreach (var said in (string[])["abc123", "2026-02-01", "pipe-1", "model-1", "0.9.9", "./gaitseat study x.yaml", "fingerprint-1", "The study file was last changed before the first session"])
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Fact]
    public void SameAnswers_GiveTheSameBytes()
    {
        string[] names = [StudyReport.HtmlName, StudyReport.MarkdownName, NumbersFile.FileName];
        Write();
        var first = names.Select(n => File.ReadAllBytes(Path.Combine(_folder, n))).ToArray();
        StudyReport.Write(Input(StudyRun.Of(Questions, _ => Season.Table)), _folder);
        Assert.Equal(first, names.Select(n => File.ReadAllBytes(Path.Combine(_folder, n))).ToArray());
    }

    [Fact]
    public void Numbers_AreInFull()
    {
        var effect = ((DoseAnswer)Results[0].Answers[0]).Effect.Estimate;
        Assert.Contains(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"1,rise_height_cm,effect +2,{effect:R}"), Written(NumbersFile.FileName), StringComparison.Ordinal);
    }

    [Fact]
    public void Summary_HasALineForEachAnswerAndPlan() =>
        Assert.Equal(Results.Sum(r => r.Answers.Count + r.Plans.Count), StudyReport.Summary(Results).Count);

    private string Written(string name)
    {
        Write();
        return File.ReadAllText(Path.Combine(_folder, name));
    }

    private void Write() => StudyReport.Write(Input(Results), _folder);

    private static ReportInput Input(IReadOnlyList<StudyResult> results) => new(
        "A season", Note, new("x.yaml", "abc123", null, new(2026, 2, 1), "question: How?\n"),
        new("season", "pipe-1", "model-1", ["0.9.9"], [1], 12, [("no_rider", 2)], 1, 480, [("hole_in_points", 7)], [("turned_out", 40)], new(2026, 3, 1), new(2026, 5, 1), [.. results.Select((_, i) => $"fingerprint-{i + 1}")]),
        results, "./gaitseat study x.yaml --dataset season --out out", "0.9.9");
}
