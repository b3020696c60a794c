using GaitSeat.Cli;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Night;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>A real clip through the worker, its child process, FFmpeg and the models: what it leaves is what <c>process</c> leaves, byte for byte.</summary>
[Collection(nameof(SeasonFolder))]
public sealed class RealClipTests(SeasonFolder season) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-realclip-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Watch_LeavesWhatProcessLeaves_AlsoWhenFfmpegAndTheClipsProcessAreKilled()
    {
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
        var clips = Directory.CreateDirectory(Path.Combine(_folder, "clips")).FullName;
        foreach (var file in new[] { SeasonFolder.Trot, "text.mp4", "session-sheet.csv" }) File.Copy(Path.Combine(season.Clips, file), Path.Combine(clips, file));
        string pipeline = Path.Combine(_folder, "p.yaml"), processed = Path.Combine(_folder, "processed"), watched = Path.Combine(_folder, "watched");
        await File.WriteAllTextAsync(pipeline, "watch:\n  scan_seconds: 0.2\n  settle_seconds: 0\n  health_port: 0\n  storage:\n    free_minimum_mb: 0\n  retry:\n    pause_seconds: 0.1\n");
        Assert.Equal(ExitCodes.SomeSetAside, (await SeasonFolder.RunAsync(default, "process", clips, "--dataset", processed, "--pipeline", pipeline)).Code);

        using var stop = new CancellationTokenSource();
        var run = Task.Run(() => SeasonFolder.RunAsync(stop.Token, "watch", clips, "--dataset", watched, "--pipeline", pipeline));
        var trot = Path.Combine(clips, SeasonFolder.Trot);
        bool IsFfmpeg(string[] words) => Path.GetFileName(words[0]) == "ffmpeg" && words.Any(w => w.Contains(trot, StringComparison.Ordinal));
        var first = await KillAsync(run, IsFfmpeg);
        await UntilAsync(run, () => Processes.Find(IsFfmpeg).Exists(id => id != first));
        await KillAsync(run, words => Path.GetFileName(words[0]).StartsWith("dotnet", StringComparison.Ordinal) && words.Contains("clip") && words[^1] == trot);
        await UntilAsync(run, () => Journal(watched).Length == 2);
        await stop.CancelAsync();
        var (code, _, error) = await run;

        Assert.True(code == ExitCodes.Done, error);
        var entries = Journal(watched).ToDictionary(e => e.ClipFile);
        Assert.Equal((NightEnd.Measured, 2), (entries[SeasonFolder.Trot].End, entries[SeasonFolder.Trot].Retries));
        Assert.Equal((NightEnd.SetAside, "not_a_video"), (entries["text.mp4"].End, entries["text.mp4"].Reason));
        Assert.InRange(entries[SeasonFolder.Trot].Strides, 3, 6);
        Assert.False(Directory.Exists(Path.Combine(watched, "worker", "crashes")) && Directory.GetFiles(Path.Combine(watched, "worker", "crashes")).Length > 0, "being killed is no crash");
        Assert.Equal(DatasetBytes.Of(processed), DatasetBytes.Of(watched));
    }

    private static NightEntry[] Journal(string dataset) => [.. JsonLines.ReadAll<NightEntry>(Path.Combine(dataset, "worker", "journal"), "*.jsonl")];

    /// <summary>Waits for such a process and kills it.</summary>
    private static async Task<int> KillAsync(Task run, Func<string[], bool> isIt)
    {
        var victim = 0;
        await UntilAsync(run, () => (victim = Processes.Find(isIt).FirstOrDefault()) != 0 && Processes.Kill(victim));
        return victim;
    }

    private static async Task UntilAsync(Task run, Func<bool> holds)
    {
        var held = false;
        for (var i = 0; i < 24_000 && !run.IsCompleted && !(held = holds()); i++) await Task.Delay(10);
        Assert.True(held, "the worker did not come to that within four minutes");
    }
}
