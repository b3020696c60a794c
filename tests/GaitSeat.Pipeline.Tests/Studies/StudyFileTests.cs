using System.Text;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Studies;
using GaitSeat.Study.Definition;

namespace GaitSeat.Pipeline.Tests.Studies;

public sealed class StudyFileTests
{
    [Fact]
    public void OneQuestion_IsTheFileItself()
    {
        var file = Parse("title: Spring\nregistered: 2026-03-01\nquestion: How?\nkind: dose_response\noutcomes: [rise_height_cm]\nexposure: leather_cm\ndose:\n  horse: nested\n");
        var study = Assert.Single(file.Questions);
        Assert.Equal(("Spring", new DateOnly(2026, 3, 1), "leather_cm", GaitSeat.Study.DoseResponse.HorseRole.Nested), (file.Title, file.Registered, study.Exposure, study.Dose.Horse));
    }

    [Fact]
    public void SeveralQuestions_TakeWhatStandsBesideTheList()
    {
        var file = Parse(
            """
            outcomes: [rise_height_cm]
            dose: { horse: none, knots: 5 }
            questions:
              - question: First?
                dose: { horse: nested }
              - question: Second?
                outcomes: [sit_impact_cm_s]
            """);
        Assert.Equal(["First?", "Second?"], file.Questions.Select(q => q.Question));
        Assert.Equal([GaitSeat.Study.DoseResponse.HorseRole.Nested, GaitSeat.Study.DoseResponse.HorseRole.None], file.Questions.Select(q => q.Dose.Horse));
        Assert.Equal([5, 5], file.Questions.Select(q => q.Dose.Knots));
        Assert.Equal(["rise_height_cm", "sit_impact_cm_s"], file.Questions.SelectMany(q => q.Outcomes));
    }

    [Fact]
    public void EveryMeasure_IsSpelledOut() =>
        Assert.True(Parse("question: How?\nkind: reliability\noutcomes: [every_measure]\n").Questions[0].Outcomes.Length > 25);

    [Theory]
    [InlineData("", "holds no settings")]
    [InlineData("question: [", "not valid YAML")]
    [InlineData("question: How?\noutcomes: [a_cm]\nkynd: agreement\n", "x.yaml:3: kynd: unknown setting; did you mean 'kind'?")]
    [InlineData("question: How?\noutcomes: [a_cm]\nkind: guess\n", "x.yaml:3: kind: expected one of dose_response, before_after, agreement, reliability, planning, found 'guess'")]
    [InlineData("question: How?\n\noutcomes: []\n", "x.yaml:3: outcomes: is empty")]
    [InlineData("question: How?\noutcomes: [a_cm]\nfilters: ['gait is trot']\n", "x.yaml:3: filters: 'gait is trot' is no condition")]
    [InlineData("question: How?\noutcomes: [a_cm]\nkind: before_after\nafter: longer\n", "x.yaml:4: after: 'longer' is no condition")]
    [InlineData("question: How?\noutcomes: [a_cm]\neffect_step: 0\n", "x.yaml:3: effect_step: 0 is out of range")]
    [InlineData("question: How?\noutcomes: [a_cm]\nregistered: spring\n", "x.yaml:3: registered: expected a day")]
    [InlineData("outcomes: [a_cm]\nquestions: none\n", "x.yaml:2: questions: expected a list of questions")]
    [InlineData("outcomes: [a_cm]\nquestions:\n  - question: One?\n  - kind: agreement\n    comparator: b_cm\n", "x.yaml:4: question: is empty")]
    public void Mistake_IsNamedWithItsLine(string yaml, string message) =>
        Assert.Contains(message, Assert.Throws<SettingsException>(() => Parse(yaml)).Message, StringComparison.Ordinal);

    [Fact]
    public void MissingFile_IsSaid() => Assert.Contains("none.yaml", Assert.Throws<SettingsException>(() => StudyFile.Read("none.yaml")).Message, StringComparison.Ordinal);

    [Fact]
    public void ShippedStudies_CanBeRead()
    {
        string[] files = [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "pipelines"), "*study*.yaml")];
        Assert.NotEmpty(files);
        Assert.All(files, f => Assert.NotEmpty(StudyFile.Read(f).Questions));
    }

    private static StudyFile Parse(string yaml) => StudyFile.Parse("x.yaml", Encoding.UTF8.GetBytes(yaml), DateTimeOffset.UnixEpoch);
}
