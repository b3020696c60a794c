using GaitSeat.Cli.Commands;
using GaitSeat.Pipeline.Settings;

namespace GaitSeat.Pipeline.Tests.Settings;

public sealed class PipelineFileTests
{
    [Fact]
    public void EmptyFile_GivesAllDefaults() =>
        Assert.Equal(PipelineHash.Of(new()), PipelineHash.Of(PipelineFile.Parse("", "x.yaml")));

    [Fact]
    public void Value_IsBound_AndTheRestStaysDefault()
    {
        var settings = PipelineFile.Parse("scout:\n  rate_hz: 3\n", "x.yaml");

        Assert.Equal(3, settings.Scout.RateHz);
        Assert.Equal(new PipelineSettings().Motion, settings.Motion);
    }

    [Theory]
    [InlineData("scout:\n  rate_hz: 900\n", 2, "scout.rate_hz", "out of range; allowed")]
    [InlineData("scout:\n  rate_hz: 5 Hz\n", 2, "scout.rate_hz", "a number without a unit")]
    [InlineData("scout:\n  rate_khz: 5\n", 2, "scout.rate_khz", "did you mean 'rate_hz'")]
    [InlineData("output:\n  tracks: perhaps\n", 2, "output.tracks", "true or false")]
    [InlineData("\nscuot:\n  rate_hz: 5\n", 2, "scuot", "did you mean 'scout'")]
    [InlineData("scout: 5\n", 1, "scout", "a group of settings")]
    [InlineData("run:\n  point_workers: 1.5\n", 2, "run.point_workers", "a whole number")]
    [InlineData("faults:\n  training:\n    outer_folds: 1\n", 3, "faults.training.outer_folds", "allowed 2 to 20")]
    [InlineData("scout:\n  rate_hz: .nan\n", 2, "scout.rate_hz", "a number")]
    public void WrongSetting_IsNamedWithLineAndWhatIsAllowed(string yaml, int line, string key, string problem)
    {
        var error = Assert.Single(Assert.Throws<SettingsException>(() => PipelineFile.Parse(yaml, "x.yaml")).Errors);

        Assert.Equal((line, key), ((int)error.Line, error.Key));
        Assert.Contains(problem, error.Problem, StringComparison.Ordinal);
        Assert.StartsWith($"x.yaml:{line}: {key}: ", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void SeveralErrors_AreAllReported() =>
        Assert.Equal(2, Assert.Throws<SettingsException>(() => PipelineFile.Parse("a: 1\nrun:\n  frames_ahead: 0\n", "x.yaml")).Errors.Count);

    [Fact]
    public void BrokenYaml_IsNamedWithItsLine() =>
        Assert.Contains("not valid YAML", Assert.Throws<SettingsException>(() => PipelineFile.Parse("a: [1\nb: 2", "x.yaml")).Message, StringComparison.Ordinal);

    [Fact]
    public void MissingFile_IsASettingsError() =>
        Assert.Throws<SettingsException>(() => PipelineFile.Read(Path.Combine(Path.GetTempPath(), "no-such-pipeline.yaml")));

    [Fact]
    public void StandardFile_IsWhatTheCodeSays_AndReadsBackAsTheDefaults()
    {
        var path = Path.Combine(Repository.Root, "pipelines", "standard.yaml");
        if (Environment.GetEnvironmentVariable("GAITSEAT_UPDATE") == "1") File.WriteAllText(path, SettingsCommand.Text());

        Assert.Equal(SettingsCommand.Text(), File.ReadAllText(path).ReplaceLineEndings("\n"));
        Assert.Equal(PipelineHash.Of(new()), PipelineHash.Of(PipelineFile.Read(path)));
    }

    [Fact]
    public void Hash_ChangesWithANumber_AndNotWithOutputOrMachine()
    {
        var standard = new PipelineSettings();

        Assert.NotEqual(PipelineHash.Of(standard), PipelineHash.Of(standard with { Scout = standard.Scout with { RateHz = standard.Scout.RateHz + 1 } }));
        Assert.Equal(PipelineHash.Of(standard), PipelineHash.Of(standard with { Run = new() { PointWorkers = 7 }, Output = new() { Overlay = false } }));
    }

    /// <summary>Rows that stand in a dataset must keep their name when only the learning from them is set otherwise.</summary>
    [Fact]
    public void FaultSettings_AreReadAndNotHashed()
    {
        var settings = PipelineFile.Parse("faults:\n  flags:\n    flag_probability: 0.7\n  training:\n    trees: 30\n", "x.yaml");

        Assert.Equal((0.7, 30), (settings.Faults.Flags.FlagProbability, settings.Faults.Training.Trees));
        Assert.Equal(PipelineHash.Of(new()), PipelineHash.Of(settings));
    }

    [Fact]
    public void UserModel_IsRead_AndItsPlaceIsNotHashed()
    {
        var settings = PipelineFile.Parse("body_points:\n  user_model: models/own.onnx\n", "x.yaml");

        Assert.Equal("models/own.onnx", settings.BodyPoints.UserModel);
        Assert.Equal(PipelineHash.Of(new()), PipelineHash.Of(settings));
    }

    [Fact]
    public void EverySetting_HasItsMeaningWritten()
    {
        var lines = SettingsCommand.Text().Split('\n').Where(l => l.Length > 0).ToArray();
        var bare = lines.Where((l, i) => !l.TrimStart().StartsWith('#') && !lines[i - 1].TrimStart().StartsWith('#')).ToArray();

        Assert.Empty(bare);
    }
}
