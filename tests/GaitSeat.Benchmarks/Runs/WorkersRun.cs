using System.Diagnostics;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Tests.Watch;

namespace GaitSeat.Benchmarks;

/// <summary>
/// Several real workers on one real PostgreSQL against one, each held to one core, over a season of short real clips: is the work shared out without loss? From the start of the workers to the
/// last clip's rows; starting .NET and loading models for each clip is part of it, the database runs on the same cores.
/// </summary>
internal static class WorkersRun
{
    private const int HeightPx = 720;
    private const double ClipSeconds = 3;

    private const string Pipeline = """
        output: { overlay: false, plot: false }
        run: { point_workers: 1 }
        watch: { scan_seconds: 1, settle_seconds: 0, health_port: 0, queue: { poll_seconds: 1 } }
        """;

    /// <param name="folder">Where footage is made once and kept.</param>
    /// <param name="clips">How many.</param>
    /// <param name="most">Most workers at once; those beyond the cores there are share them in turn.</param>
    public static async Task<int> RunAsync(string folder, int clips, int most, TextWriter output, CancellationToken ct)
    {
        var season = await SeasonAsync(folder, clips, ct);
        await using var server = await PostgresServer.StartAsync();
        output.WriteLine($"| workers | cores | {clips} clips of {ClipSeconds} s | against one worker | of linear |");
        output.WriteLine("|---|---|---|---|---|");
        var alone = 0.0;
        for (var workers = 1; workers <= most; workers++)
        {
            var seconds = await SeasonSecondsAsync(season, clips, workers, server.Connection, ct);
            await server.ForgetAsync("gaitseat_queue");
            if (workers == 1) alone = seconds;
            var cores = Math.Min(workers, Environment.ProcessorCount);
            output.WriteLine($"| {workers} | {cores} | {seconds:0.0} s | {alone / seconds:0.00} × | {alone / seconds / cores:0.00} |");
        }

        return 0;
    }

    private static async Task<double> SeasonSecondsAsync(string season, int clips, int workers, string connection, CancellationToken ct)
    {
        var folder = Directory.CreateTempSubdirectory("gaitseat-workers-").FullName;
        string dataset = Path.Combine(folder, "dataset"), pipeline = Path.Combine(folder, "p.yaml");
        await File.WriteAllTextAsync(pipeline, Pipeline, ct);
        var clock = Stopwatch.StartNew();
        var running = Enumerable.Range(0, workers)
            .Select(w => ProgramRun.StartOnCore(w % Environment.ProcessorCount, "watch", season, "--dataset", dataset, "--pipeline", pipeline, "--queue", connection))
            .ToList();
        // Nobody reads what they say; a full pipe would stop them.
        foreach (var worker in running)
        {
            worker.ErrorDataReceived += (_, _) => { };
            worker.BeginErrorReadLine();
        }

        while (Rows(dataset) < clips)
        {
            if (running.Find(w => w.HasExited) is { } ended) throw new InvalidOperationException($"a worker ended with {ended.ExitCode}");
            await Task.Delay(100, ct);
        }

        var seconds = clock.Elapsed.TotalSeconds;
        foreach (var worker in running)
        {
            using (worker)
            using (var stop = Process.Start("kill", ["-TERM", $"{worker.Id}"]))
                await worker.WaitForExitAsync(ct);
        }

        var measured = Directory.GetFiles(Path.Combine(dataset, "strides"), "*.parquet").Length;
        Directory.Delete(folder, recursive: true);
        return measured == clips ? seconds : throw new InvalidOperationException($"{measured} of {clips} clips were measured");
    }

    private static int Rows(string dataset) => Directory.Exists(Path.Combine(dataset, "clips")) ? Directory.GetFiles(Path.Combine(dataset, "clips"), "*.parquet").Length : 0;

    /// <summary>Parts of one ride, each from another key frame, so that no two have the same bytes.</summary>
    private static async Task<string> SeasonAsync(string folder, int clips, CancellationToken ct)
    {
        var ffmpeg = FfmpegTools.Locate();
        var season = Path.Combine(folder, $"season-{clips}");
        if (Directory.Exists(season)) return season;
        var ride = await new LessonFootage(ffmpeg, folder).TrotAsync(HeightPx, ct);
        var begun = Directory.CreateDirectory(season + ".part").FullName;
        const int Places = (int)(LessonFootage.TrotSeconds - ClipSeconds);
        for (var i = 0; i < clips; i++)
        {
            string[] words = ["-nostdin", "-v", "error", "-y", "-ss", $"{i % Places}", "-i", ride, "-t", $"{ClipSeconds}", "-c", "copy", "-metadata", $"title=clip {i}", Path.Combine(begun, $"c{i:000}.mp4")];
            using var process = Process.Start(ffmpeg.FfmpegPath, words);
            await process.WaitForExitAsync(ct);
            if (process.ExitCode != 0) throw new InvalidOperationException($"ffmpeg ended with {process.ExitCode}");
        }

        Directory.Move(begun, season);
        return season;
    }
}
