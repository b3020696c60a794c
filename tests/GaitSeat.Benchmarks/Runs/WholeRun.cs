using System.Diagnostics;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Models;

namespace GaitSeat.Benchmarks;

/// <summary>
/// The whole measurement of a clip beside two bare floors: decoding every frame and nothing else, and running the body-point models on a fixed input as
/// often as there are frames, on as many sessions side by side as the run has workers. Quoted as ratios, because machines are noisy.
/// </summary>
internal static class WholeRun
{
    /// <summary>What the second pass runs on a frame.</summary>
    public static IReadOnlyList<ModelSource> BodyPointModels { get; } = [ModelCatalogue.MoveNetThunder, ModelCatalogue.BlazePoseHeavy];

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
            var frames = (await new ClipMeasurer(workshop).MeasureAsync(clip, BodyLengths.Unknown, null, ct)).Sightings.Count;
            var whole = frames / clock.Elapsed.TotalSeconds;
            var decode = await DecodeFloorAsync(ffmpeg, info, settings.Read, ct);
            var points = frames / InferenceSeconds(models, BodyPointModels, settings.Run.PointWorkers, frames);
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

    /// <summary>Running models one after the other on a fixed input, so many times, shared out over one-thread sessions side by side, s. Loading is not counted.</summary>
    public static double InferenceSeconds(ModelStore models, IReadOnlyList<ModelSource> sources, int workers, int times)
    {
        ModelFile[] files = [.. sources.Select(models.Ensure)];
        var desks = Enumerable.Range(0, workers).Select(_ => files.Select(f => new OnnxSession(f, 1)).ToArray()).ToArray();
        float[][] inputs = [.. desks[0].Select(s => Enumerable.Repeat(0.5f, s.InputLength).ToArray())];
        foreach (var desk in desks) Once(desk, inputs);
        var clock = Stopwatch.StartNew();
        Parallel.ForEach(desks.Select((d, i) => (Desk: d, Times: (times / workers) + (i < times % workers ? 1 : 0))), new ParallelOptions { MaxDegreeOfParallelism = workers }, share =>
        {
            for (var i = 0; i < share.Times; i++) Once(share.Desk, inputs);
        });
        var seconds = clock.Elapsed.TotalSeconds;
        foreach (var session in desks.SelectMany(d => d)) session.Dispose();
        return seconds;
    }

    private static void Once(OnnxSession[] desk, float[][] inputs)
    {
        for (var m = 0; m < desk.Length; m++) desk[m].Run(inputs[m], 1);
    }
}
