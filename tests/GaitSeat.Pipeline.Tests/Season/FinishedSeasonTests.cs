using System.Diagnostics;
using System.Globalization;
using System.Text;
using GaitSeat.Cli;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Worker;
using GaitSeat.Store;
using GaitSeat.Vision.Models;

namespace GaitSeat.Pipeline.Tests.Season;

/// <summary>A season that is done: both commands say so, and what that took is printed (docs/worker.md). Rows come from the program's own writers under the real pipeline's name; what is in them is made up.</summary>
public sealed class FinishedSeasonTests(ITestOutputHelper output) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-finished-").FullName;

    private string Clips => Path.Combine(_folder, "clips");

    private string Pipeline => Path.Combine(_folder, "p.yaml");

    private string DatasetFolder => Path.Combine(_folder, "dataset");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task SecondStart_FindsNothingToDo()
    {
        if (!File.Exists("/bin/bash")) Assert.Skip("needs bash to tell what a process spent");
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
        var clips = LongRun.IsOn ? 5000 : 200;
        await MakeAsync(clips);
        // The first start reads every clip once and makes the sessions; those after it are measured.
        var first = await ProcessAsync(clips);

        var process = await ProcessAsync(clips);
        var watch = await WatchAsync(clips);

        output.WriteLine($"{clips} clips: first start {first}; nothing to do after {process} (process), {watch} (watch)");
    }

    private async Task MakeAsync(int clips)
    {
        Directory.CreateDirectory(Clips);
        var sheet = new StringBuilder("clip_file,session_date,rider,horse,rider_stature_cm,consent\n");
        for (var i = 0; i < clips; i++)
        {
            await File.WriteAllTextAsync(Path.Combine(Clips, Name(i)), $"clip {i}");
            sheet.Append(null, $"{Name(i)},2026-04-{1 + i / 5 % 28:00},Rider{i / 140},Horse{i / 140},170,yes\n");
        }

        await File.WriteAllTextAsync(Path.Combine(Clips, SessionSheet.FileName), sheet.ToString());
        // What the worker does changes no pipeline hash.
        await File.WriteAllTextAsync(Pipeline, "watch:\n  health_port: 0\n  storage:\n    free_minimum_mb: 0\n");
        using var workshop = Workshop.Open(FfmpegTools.Locate(), new(Repository.Weights, ModelStore.DefaultCacheFolder), new());
        var work = new ClipWork(new MadeStage(TimeSpan.Zero, workshop.PipelineHash, workshop.ModelHash), Dataset.Open(DatasetFolder), tracks: true, "0");
        var rows = SeasonSheet.Of(Clips, new(2026, 6, 1));
        await Parallel.ForAsync(0, clips, async (i, ct) => await work.DoAsync(await KeyedClip.OfAsync(Path.Combine(Clips, Name(i)), ct), rows.RowOf(Name(i)), null, ct));
    }

    private static string Name(int i) => $"c{i:0000}.mp4";

    private async Task<Took> ProcessAsync(int clips)
    {
        var begun = Stopwatch.GetTimestamp();
        // .NET forgets what a process spent when it ends; the shell tells, in a last line.
        using var process = Start("/bin/bash", ["-c", "TIMEFORMAT='%U %S'; time \"$@\"", "bash", Dotnet, .. Words("process")]);
        var said = process.StandardError.ReadToEndAsync();
        Assert.Contains($"0 measured, {clips} already done", await process.StandardOutput.ReadToEndAsync(), StringComparison.Ordinal);
        await process.WaitForExitAsync();
        var took = Stopwatch.GetElapsedTime(begun);
        Assert.True(process.ExitCode == ExitCodes.Done, await said);
        var spent = (await said).TrimEnd().Split('\n')[^1].Split(' ').Sum(s => double.Parse(s, CultureInfo.InvariantCulture));
        return new(took, TimeSpan.FromSeconds(spent));
    }

    private async Task<Took> WatchAsync(int clips)
    {
        var begun = Stopwatch.GetTimestamp();
        using var process = Start(Dotnet, [.. Words("watch")]);
        Took? took = null;
        var said = new StringBuilder();
        while (await process.StandardError.ReadLineAsync() is { } line)
        {
            said.AppendLine(line);
            if (!line.Contains($"nothing to do: all {clips} clips", StringComparison.Ordinal)) continue;
            took = new(Stopwatch.GetElapsedTime(begun), process.TotalProcessorTime);
            using var stop = Process.Start("kill", ["-TERM", process.Id.ToString(null, null)]);
        }

        await process.WaitForExitAsync();
        Assert.True(took is not null, said.ToString());
        return took;
    }

    /// <param name="Clock">What a user waits.</param>
    /// <param name="Processor">What all cores together spent.</param>
    private sealed record Took(TimeSpan Clock, TimeSpan Processor)
    {
        public override string ToString() => FormattableString.Invariant($"{Clock.TotalSeconds:0.0} s ({Processor.TotalSeconds:0.0} s of processor)");
    }

    private static string Dotnet => Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";

    private string[] Words(string command) => [typeof(CommandLine).Assembly.Location, command, Clips, "--dataset", DatasetFolder, "--pipeline", Pipeline];

    private static Process Start(string program, params string[] words) =>
        Process.Start(new ProcessStartInfo(program, words) { RedirectStandardError = true, RedirectStandardOutput = true })!;
}
