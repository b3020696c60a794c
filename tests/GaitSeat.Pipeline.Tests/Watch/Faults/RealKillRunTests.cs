using System.Diagnostics;
using GaitSeat.Cli;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Tests.Season;

namespace GaitSeat.Pipeline.Tests.Watch.Faults;

/// <summary>The same as <see cref="KillRunTests"/> with the real program, FFmpeg and models on short real clips: SIGKILL at random moments for the worker, the clip's process or FFmpeg. Long.</summary>
[Collection(nameof(SeasonFolder))]
public sealed class RealKillRunTests(SeasonFolder season, ITestOutputHelper output) : IDisposable
{
    private const int Kills = 30;
    private const int Clips = 3;
    private const int LongestPauseMilliseconds = 5000;
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-realkills-").FullName;
    private readonly Random _chance = new(7);
    private readonly Dictionary<string, int> _killed = new() { ["worker"] = 0, ["clip's process"] = 0, ["FFmpeg"] = 0 };

    private string ClipFolder => Path.Combine(_folder, "clips");

    private string Pipeline => Path.Combine(_folder, "p.yaml");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task RealClips_WhoeverIsKilledWhenever_TheBytesAreThoseOfAQuietRun()
    {
        if (!LongRun.IsOn) Assert.Skip("long: ./gaitseat test --long");
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
        await CutAsync(SeasonFolder.Trot, "trot.mp4", 2.2);
        await CutAsync(SeasonFolder.Walk, "walk.mp4", 1.2);
        await File.WriteAllTextAsync(Path.Combine(ClipFolder, "text.mp4"), "no film");
        await File.WriteAllTextAsync(Pipeline, "watch:\n  scan_seconds: 0.2\n  settle_seconds: 0\n  health_port: 0\n  put_off_minutes: 0\n  storage:\n    free_minimum_mb: 0\n  retry:\n    pause_seconds: 0.1\n    pause_maximum_seconds: 1\n");
        var quiet = Path.Combine(_folder, "quiet");
        Assert.Equal(ExitCodes.SomeSetAside, (await SeasonFolder.RunAsync(default, "process", ClipFolder, "--dataset", quiet, "--pipeline", Pipeline)).Code);

        var seasons = 0;
        while (_killed.Values.Sum() < Kills)
        {
            var dataset = Path.Combine(_folder, $"season{seasons++}");
            var worker = Start(dataset);
            while (Rows(dataset) < Clips)
            {
                if (_killed.Values.Sum() < Kills) worker = await KillOneAsync(dataset, worker);
                else await Task.Delay(100);
            }

            using (worker)
            using (var stop = Process.Start("kill", ["-TERM", worker.Id.ToString(null, null)]))
            {
                await worker.WaitForExitAsync();
                Assert.Equal(ExitCodes.Done, worker.ExitCode);
            }

            SeasonCheck.Throw(quiet, dataset, Clips, "tracks");
        }

        output.WriteLine($"{_killed.Values.Sum()} kills over {seasons} seasons of {Clips} clips: {string.Join(", ", _killed.Select(k => $"{k.Key} {k.Value}"))}");
        Assert.All(_killed.Values, times => Assert.InRange(times, 1, Kills));
    }

    private async Task<Process> KillOneAsync(string dataset, Process worker)
    {
        // Mostly a clip is in hand; where starting takes long, as on a busy machine, kills would else fall on nothing but starts.
        var patience = _chance.Next(4) == 0 ? 0 : 400;
        while (patience-- > 0 && !worker.HasExited && ClipProcesses(dataset).Count == 0 && Rows(dataset) < Clips) await Task.Delay(50);
        await Task.Delay(_chance.Next(LongestPauseMilliseconds));
        switch (_chance.Next(3))
        {
            case 0:
                Assert.False(worker.HasExited, "the worker came down by itself");
                worker.Kill();
                worker.Dispose();
                _killed["worker"]++;
                return Start(dataset);
            case 1:
                if (KillAny(ClipProcesses(dataset))) _killed["clip's process"]++;
                return worker;
            default:
                if (KillAny(Processes.Find(words => Path.GetFileName(words[0]) is "ffmpeg" or "ffprobe" && words.Any(w => w.Contains(_folder, StringComparison.Ordinal))))) _killed["FFmpeg"]++;
                return worker;
        }
    }

    private static List<int> ClipProcesses(string dataset) => Processes.Find(words => words.Contains("clip") && words.Contains(dataset));

    private bool KillAny(List<int> processes) => processes.Count > 0 && Processes.Kill(processes[_chance.Next(processes.Count)]);

    private Process Start(string dataset)
    {
        string[] words = [typeof(CommandLine).Assembly.Location, "watch", ClipFolder, "--dataset", dataset, "--pipeline", Pipeline];
        return Process.Start(new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet", words))!;
    }

    private async Task CutAsync(string from, string to, double seconds)
    {
        Directory.CreateDirectory(ClipFolder);
        string[] words = ["-nostdin", "-v", "error", "-i", Path.Combine(season.Clips, from), "-t", FormattableString.Invariant($"{seconds}"), "-c", "copy", Path.Combine(ClipFolder, to)];
        using var process = Process.Start(new ProcessStartInfo(FfmpegTools.Locate().FfmpegPath, words))!;
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
    }

    private static int Rows(string dataset) => Directory.Exists(Path.Combine(dataset, "clips")) ? Directory.GetFiles(Path.Combine(dataset, "clips"), "*.parquet").Length : 0;
}
