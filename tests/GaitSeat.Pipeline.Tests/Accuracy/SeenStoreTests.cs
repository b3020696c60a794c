using GaitSeat.Cli;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Studio;

namespace GaitSeat.Pipeline.Tests.Accuracy;

/// <summary>A run over one short made clip: what was seen is kept, found again, and not taken for another clip.</summary>
public sealed class SeenStoreTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-seen-").FullName;

    private string Seen => Path.Combine(_folder, "work", "seen", "a.seen.json.gz");

    [Fact]
    public async Task SecondRun_TakesWhatWasSeen_AndPrintsTheSame()
    {
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
        await MakeAsync(seed: 3);
        var first = await RunAsync();
        Assert.Equal(ExitCodes.Done, first.Code);
        var kept = await File.ReadAllBytesAsync(Seen, TestContext.Current.CancellationToken);
        File.SetLastWriteTimeUtc(Seen, new DateTime(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc));

        var second = await RunAsync();
        var other = await RunAsync("--pipeline", await PipelineAsync("scout:\n  rate_hz: 3\n"), "--reuse");

        Assert.Equal(first.Out, second.Out);
        Assert.Equal(first.Out, other.Out);
        Assert.Equal(2020, File.GetLastWriteTimeUtc(Seen).Year);

        // Other settings before the maths, or another clip under the same name, are seen anew.
        await RunAsync("--pipeline", await PipelineAsync("scout:\n  rate_hz: 3\n"));
        Assert.NotEqual(2020, File.GetLastWriteTimeUtc(Seen).Year);
        await MakeAsync(seed: 4);
        await RunAsync("--reuse");
        Assert.NotEqual(kept, await File.ReadAllBytesAsync(Seen, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData(null, "nothing to compare with")]
    [InlineData("{}", "has no clip beside it")]
    public async Task FolderThatLacksSomething_IsWrongUsage(string? truth, string message)
    {
        if (truth is not null) await File.WriteAllTextAsync(Path.Combine(_folder, "a.truth.json"), truth, TestContext.Current.CancellationToken);

        var (code, _, error) = await SeasonFolder.RunAsync(default, "accuracy", "--footage", _folder);

        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains(message, error.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public async Task FileThatIsNoTruth_IsWrongUsage()
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "a.truth.json"), "{}", TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(Path.Combine(_folder, "a.mp4"), "x", TestContext.Current.CancellationToken);

        var (code, _, error) = await RunAsync();

        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("is not a truth file", error.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--clips", "0", "1 or more")]
    [InlineData("--footage", "no-such-folder", "there is no folder")]
    [InlineData("--set", "huge", "huge")]
    public async Task WrongArgument_IsWrongUsage(string option, string value, string message)
    {
        var (code, _, error) = await SeasonFolder.RunAsync(default, "accuracy", option, value);

        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains(message, error, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private Task<StudioClip> MakeAsync(int seed) => new StudioRenderer(FfmpegTools.Locate()).RenderAsync(
        new ClipScript { Seed = seed, DurationSeconds = 1.6, FrameRateHz = 25, WidthPx = 640, HeightPx = 360, RiderHeightPx = 160 }, _folder, "a", TestContext.Current.CancellationToken);

    private Task<(int Code, string Out, string Error)> RunAsync(params string[] more) =>
        SeasonFolder.RunAsync(default, ["accuracy", "--footage", _folder, "--work", Path.Combine(_folder, "work"), .. more]);

    private async Task<string> PipelineAsync(string yaml)
    {
        var path = Path.Combine(_folder, "p.yaml");
        await File.WriteAllTextAsync(path, yaml);
        return path;
    }
}
