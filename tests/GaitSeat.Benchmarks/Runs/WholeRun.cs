using System.Diagnostics;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Models;

namespace GaitSeat.Benchmarks;

/// <summary>
/// The whole measurement of a clip beside two bare floors: decoding every frame and nothing else, and running the body-point models on a fixed input as
/// often as they read a frame, on as many sessions side by side as the run has workers. Quoted as ratios, because machines are noisy.
/// </summary>
internal static class WholeRun
{
    public static ModelStore Models()
    {
        var home = Environment.GetEnvironmentVariable("GAITSEAT_HOME") ?? Directory.GetCurrentDirectory();
        return new(Path.Combine(home, "node_modules", "@vladmandic", "human-models", "models"), ModelStore.DefaultCacheFolder);
    }

    public static async Task<int> CompareAsync(IReadOnlyList<string> clips, TextWriter output, CancellationToken ct)
    {
        var settings = new PipelineSettings();
        var ffmpeg = FfmpegTools.Locate();
        var models = Models();
        using var workshop = Workshop.Open(ffmpeg, models, settings);
        output.WriteLine("| clip | frames | whole run, frames/s | decode alone | body points alone | whole / slower floor |");
        output.WriteLine("|---|---|---|---|---|---|");
        foreach (var clip in clips)
        {
            var info = await new ClipProbe(ffmpeg, settings.Probe).ProbeAsync(clip, ct);
            await new ClipMeasurer(workshop).MeasureAsync(clip, BodyLengths.Unknown, null, ct);
            var clock = Stopwatch.StartNew();
            var seen = await new ClipMeasurer(workshop).SeeAsync(clip, null, ct);
            var frames = ClipMeasurer.Measure(seen, BodyLengths.Unknown, settings).Sightings.Count;
            var whole = frames / clock.Elapsed.TotalSeconds;
            var decode = await DecodeFloorAsync(ffmpeg, info, settings.Read, ct);
            var points = frames / PointsSeconds(models, settings.Run.PointWorkers, seen);
            output.WriteLine($"| {Path.GetFileName(clip)} | {frames} | {whole:0.0} | {decode:0} | {points:0.0} | {whole / Math.Min(decode, points):0.00} |");
        }

        return 0;
    }

    /// <summary>Decoding every frame and doing nothing with it, frames a second.</summary>
    public static async Task<double> DecodeFloorAsync(FfmpegTools ffmpeg, ClipInfo info, ReadSettings read, CancellationToken ct)
    {
        var clock = Stopwatch.StartNew();
        var frames = 0;
        await foreach (var frame in new FrameReader(ffmpeg, FrameColours.Planes).ReadAsync(info, read, ct))
        {
            frame.Dispose();
            frames++;
        }

        return frames / clock.Elapsed.TotalSeconds;
    }

    /// <summary>The body-point models as often as they read a frame of what was seen, s: the second does not read every frame of a fast clip.</summary>
    public static double PointsSeconds(ModelStore models, int workers, SeenClip seen) =>
        InferenceSeconds(models, ModelCatalogue.MoveNetThunder, workers, seen.Poses.Count(p => p is not null))
        + InferenceSeconds(models, ModelCatalogue.BlazePoseHeavy, workers, seen.Poses.Count(p => p?.Second is not null));

    /// <summary>Running a model on a fixed input, so many times, shared out over one-thread sessions side by side, s. Loading is not counted.</summary>
    public static double InferenceSeconds(ModelStore models, ModelSource source, int workers, int times)
    {
        var file = models.Ensure(source);
        OnnxSession[] sessions = [.. Enumerable.Range(0, workers).Select(_ => new OnnxSession(file, 1))];
        float[] input = [.. Enumerable.Repeat(0.5f, sessions[0].InputLength)];
        foreach (var session in sessions) session.Run(input, 1);
        var clock = Stopwatch.StartNew();
        Parallel.ForEach(sessions.Select((s, i) => (Session: s, Times: (times / workers) + (i < times % workers ? 1 : 0))), new ParallelOptions { MaxDegreeOfParallelism = workers }, share =>
        {
            for (var i = 0; i < share.Times; i++) share.Session.Run(input, 1);
        });
        var seconds = clock.Elapsed.TotalSeconds;
        foreach (var session in sessions) session.Dispose();
        return seconds;
    }
}
