using GaitSeat.Cli;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Season;

/// <summary>What a user gets who calls it wrong: a message that says what, where and what is allowed, and the documented exit code.</summary>
public sealed class CommandLineTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-cli-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task NoDatasetGiven_IsWrongUsage()
    {
        var (code, _, error) = await SeasonFolder.RunAsync(default, "process", _folder);

        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("dataset", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no-such-folder", "there is no folder")]
    [InlineData("", "no clips in")]
    public async Task FolderWithoutClips_IsWrongUsage(string folder, string message)
    {
        var (code, _, error) = await SeasonFolder.RunAsync(default, "sheet", Path.Combine(_folder, folder));

        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains(message, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sheet_ListsTheClips_AndAddsNewOnes()
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "one.mp4"), "x");
        Assert.Equal(ExitCodes.Done, (await SeasonFolder.RunAsync(default, "sheet", _folder)).Code);
        await File.WriteAllTextAsync(Path.Combine(_folder, "two.mov"), "x");
        Assert.Equal(ExitCodes.Done, (await SeasonFolder.RunAsync(default, "sheet", _folder)).Code);

        var lines = await File.ReadAllLinesAsync(Path.Combine(_folder, SessionSheet.FileName));
        Assert.Equal(3, lines.Length);
        Assert.StartsWith("clip_file,", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("one.mp4,", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("two.mov,", lines[2], StringComparison.Ordinal);
    }

    [Fact]
    public async Task DamagedPipelineFile_IsWrongUsage_WithFileAndLine()
    {
        var file = Path.Combine(_folder, "p.yaml");
        await File.WriteAllTextAsync(file, "scout:\n  rate_hz: fast\n");

        var (code, _, error) = await SeasonFolder.RunAsync(default, "process", _folder, "--dataset", _folder, "--pipeline", file);

        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("p.yaml:2: scout.rate_hz", error.ReplaceLineEndings(""), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false, "not found")]
    [InlineData(true, "cannot load")]
    public async Task UserModelThatCannotBeUsed_SaysKeyFileAndWhatIsAllowed(bool present, string found)
    {
        string file = Path.Combine(_folder, "p.yaml"), model = Path.Combine(_folder, "own.onnx"), dataset = Path.Combine(_folder, "dataset");
        await File.WriteAllTextAsync(file, $"body_points:\n  user_model: '{model}'\n");
        await File.WriteAllTextAsync(Path.Combine(_folder, "one.mp4"), "x");
        if (present) await File.WriteAllTextAsync(model, "this is a letter to my aunt");

        var (code, _, error) = await SeasonFolder.RunAsync(default, "process", _folder, "--dataset", dataset, "--pipeline", file);

        Assert.Equal(ExitCodes.NotInstalled, code);
        var message = error.ReplaceLineEndings("");
        foreach (var part in (string[])["body_points.user_model", model, found, "[N,17,h,w]"]) Assert.Contains(part, message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(dataset));
    }

    [Fact]
    public async Task UnknownCommand_IsWrongUsage() =>
        Assert.Equal(ExitCodes.WrongUsage, (await SeasonFolder.RunAsync(default, "gallop")).Code);

    [Fact]
    public async Task Settings_PrintTheStandardPipeline()
    {
        var (code, text, _) = await SeasonFolder.RunAsync(default, "settings");

        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("rate_hz:", text, StringComparison.Ordinal);
    }
}
