using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class VerdictSheetTests : IDisposable
{
    private const string Header = "clip_file,spell,fault,verdict,judge,judged_at,drawn,note\n";
    private static readonly DateTimeOffset Now = new(2026, 6, 2, 0, 0, 0, TimeSpan.Zero);
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task GoodLine_BecomesAVerdictWithWhatTheToolHadSaid()
    {
        var result = await Read("clip-a.mp4,2,pressing_the_stirrup,Agrees,C1,2026-06-01T14:00:00+02:00,ranked,\"look, twice\"");
        Assert.Empty(result.Errors);
        var verdict = Assert.Single(result.Verdicts);
        Assert.Equal(
            new Verdict(Made.KeyA, "clip-a.mp4", 2, Fault.PressingTheStirrup, VerdictAnswer.Agrees, "C1", new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero), "look, twice", Drawn.Ranked, true, 0.998, "pipe1", "model1", null),
            verdict);
    }

    [Fact]
    public async Task FaultNotFlagged_IsToldAsNotFlagged()
    {
        var verdict = Assert.Single((await Read("clip-a.mp4,2,fork_seat,does_not,C1,2026-06-01,,")).Verdicts);
        Assert.Equal((false, (double?)null, Drawn.Chosen), (verdict.ToldFlagged, verdict.ToldProbability, verdict.Drawn));
    }

    [Fact]
    public async Task AllFaults_GiveOneVerdictEach()
    {
        var verdicts = (await Read("clip-a.mp4,2,all,does_not,C1,2026-06-01,random,")).Verdicts;
        Assert.Equal(Enum.GetValues<Fault>(), verdicts.Select(v => v.Fault));
        Assert.All(verdicts, v => Assert.Equal((VerdictAnswer.DoesNot, Drawn.Random), (v.Answer, v.Drawn)));
    }

    [Theory]
    [InlineData("clip-z.mp4,2,fork_seat,agrees,C1,2026-06-01,,", "clip_file", "clip-z.mp4")]
    [InlineData("clip-a.mp4,7,fork_seat,agrees,C1,2026-06-01,,", "spell", "spells 1, 2")]
    [InlineData("clip-a.mp4,x,fork_seat,agrees,C1,2026-06-01,,", "spell", "number")]
    [InlineData("clip-a.mp4,2,crooked,agrees,C1,2026-06-01,,", "fault", "stirrup_short")]
    [InlineData("clip-a.mp4,2,fork_seat,maybe,C1,2026-06-01,,", "verdict", "cannot_tell")]
    [InlineData("clip-a.mp4,2,fork_seat,agrees,,2026-06-01,,", "judge", "pseudonym")]
    [InlineData("clip-a.mp4,2,fork_seat,agrees,C1,1 June,,", "judged_at", "2026-05-31T14:05:00+02:00")]
    [InlineData("clip-a.mp4,2,fork_seat,agrees,C1,2026-06-01T10:00:00,,", "judged_at", "offset")]
    [InlineData("clip-a.mp4,2,fork_seat,agrees,C1,2026-06-03,,", "judged_at", "past")]
    [InlineData("clip-a.mp4,2,fork_seat,agrees,C1,2026-06-01,lottery,", "drawn", "random")]
    public async Task BadField_SaysLineColumnAndWhatIsAllowed(string line, string column, string said)
    {
        var result = await Read("clip-a.mp4,2,fork_seat,agrees,C1,2026-06-01,,\n" + line);
        var error = Assert.Single(result.Errors);
        Assert.Equal((3, column), (error.Line, error.Column));
        Assert.Contains(said, error.Message, StringComparison.Ordinal);
        Assert.Single(result.Verdicts);
    }

    [Fact]
    public async Task QueuesSheet_IsReadBackWithWhatTheToolHadSaid()
    {
        var dataset = await WriteDataset();
        var path = _folder.File("to-fill.csv");
        VerdictSheet.WriteToFill(path, [new("clip-a.mp4", 2, Fault.ForkSeat, "thigh 56 ± 2 deg, \"see\"", Drawn.Uncertain, false, 0.4321, "abc"), new("clip-a.mp4", 1, null, null, Drawn.Random, false, null, null)]);
        var blank = VerdictSheet.Read(path, dataset, null, Now);
        Assert.Equal((0, 0, 2), (blank.Verdicts.Count, blank.Errors.Count, blank.NotJudged));
        File.WriteAllText(path, File.ReadAllText(path).Replace("fork_seat,,,,", "fork_seat,agrees,C1,2026-06-01,", StringComparison.Ordinal));
        var filled = VerdictSheet.Read(path, dataset, null, Now);
        Assert.Equal((1, 0, 1), (filled.Verdicts.Count, filled.Errors.Count, filled.NotJudged));
        var verdict = filled.Verdicts[0];
        Assert.Equal((Drawn.Uncertain, (bool?)false, (double?)0.4321, "abc", "thigh 56 ± 2 deg, \"see\""), (verdict.Drawn, verdict.ToldFlagged, verdict.ToldProbability, verdict.ClassifierHash, verdict.Note));
    }

    [Fact]
    public async Task SheetThatIsThere_IsNotWrittenOver()
    {
        var path = Sheet("clip-a.mp4,2,fork_seat,agrees,C1,2026-06-01,,", Header);
        Assert.Throws<IOException>(() => VerdictSheet.WriteToFill(path, []));
        Assert.Single(VerdictSheet.Read(path, await WriteDataset(), null, Now).Verdicts);
    }

    [Theory]
    [InlineData("flagged", "1.2", "told_probability")]
    [InlineData("flagged", "0,5", "told_probability")]
    [InlineData("perhaps", "0.5", "told")]
    public async Task WhatTheToolHadSaid_IsChecked(string told, string probability, string column)
    {
        var result = await Read($"clip-a.mp4,2,fork_seat,agrees,C1,2026-06-01,{told},\"{probability}\"", "clip_file,spell,fault,verdict,judge,judged_at,told,told_probability\n");
        Assert.Equal(column, Assert.Single(result.Errors).Column);
    }

    [Fact]
    public async Task MissingColumn_NamesItAndWhatWasFound()
    {
        var error = Assert.Single((await Read("clip-a.mp4,2,fork_seat,agrees,C1", "clip_file,spell,fault,verdict,judge\n")).Errors);
        Assert.Equal("judged_at", error.Column);
    }

    [Fact]
    public async Task OneJudgeSayingTwoThingsAtOnce_IsAnError()
    {
        var result = await Read("clip-a.mp4,2,fork_seat,agrees,C1,2026-06-01,,\nclip-a.mp4,2,fork_seat,does_not,C1,2026-06-01,,");
        Assert.Equal((3, "verdict"), (Assert.Single(result.Errors).Line, result.Errors[0].Column));
    }

    [Fact]
    public async Task JudgesWhoDiffer_AreAWarningAndBothKept()
    {
        var result = await Read("clip-a.mp4,2,fork_seat,agrees,C1,2026-06-01,,\nclip-a.mp4,2,fork_seat,does_not,C2,2026-06-01,,");
        Assert.Empty(result.Errors);
        Assert.Equal(2, result.Verdicts.Count);
        Assert.Contains("2 judges differ on fork_seat", Assert.Single(result.Warnings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SeveralRuns_AskForOneAndTakeItByName()
    {
        var dataset = await WriteDataset();
        await dataset.WriteAsync(Clip("pipe2"), withTracks: false, CancellationToken.None);
        var sheet = Sheet("clip-a.mp4,2,fork_seat,agrees,C1,2026-06-01,,", Header);
        var refused = Assert.Throws<DatasetException>(() => VerdictSheet.Read(sheet, dataset, null, Now));
        Assert.Contains("pipe2", refused.Message, StringComparison.Ordinal);
        Assert.Equal("pipe2", Assert.Single(VerdictSheet.Read(sheet, dataset, "pipe2", Now).Verdicts).PipelineHash);
    }

    [Fact]
    public async Task NoFile_SaysSo() =>
        Assert.Contains("no verdict sheet", Assert.Single(VerdictSheet.Read(_folder.File("none.csv"), await WriteDataset(), null, Now).Errors).Message, StringComparison.Ordinal);

    private async Task<VerdictSheetResult> Read(string lines, string header = Header)
    {
        var dataset = await WriteDataset();
        return VerdictSheet.Read(Sheet(lines, header), dataset, null, Now);
    }

    private string Sheet(string lines, string header)
    {
        var path = _folder.File("verdicts.csv");
        File.WriteAllText(path, header + lines + "\n");
        return path;
    }

    private async Task<Dataset> WriteDataset()
    {
        var dataset = Dataset.Open(_folder.File("season"));
        await dataset.WriteAsync(Clip("pipe1"), withTracks: false, CancellationToken.None);
        return dataset;
    }

    private static ClipRecord Clip(string pipeline) => Made.Measured(pipeline: pipeline);
}
