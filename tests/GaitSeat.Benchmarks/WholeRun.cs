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
    public static async Task<int> CompareAsync(IReadOnlyList<string> clips, TextWriter output, CancellationToken ct)
    {
        var settings = new PipelineSettings();
        var ffmpeg = FfmpegTools.Locate();
        var home = Environment.GetEnvironmentVariable("GAITSEAT_HOME") ?? Directory.GetCurrentDirectory();
        var models = new ModelStore(Path.Combine(home, "node_modules", "@vladmandic", "human-models", "models"), ModelStore.DefaultCacheFolder);
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
            var points = InferenceFloor(models, settings.Run.PointWorkers, frames);
            output.WriteLine($"| {Path.GetFileName(clip)} | {frames} | {whole:0.0} | {decode:0} | {points:0.0} | {whole / Math.Min(decode, points):0.00} |");
        }

        return 0;
    }

    private static async Task<double> DecodeFloorAsync(FfmpegTools ffmpeg, ClipInfo info, ReadSettings read, CancellationToken ct)
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

    private static double InferenceFloor(ModelStore models, int workers, int frames)
    {
        ModelFile thunder = models.Ensure(ModelCatalogue.MoveNetThunder), heavy = models.Ensure(ModelCatalogue.BlazePoseHeavy);
        var sessions = Enumerable.Range(0, workers).Select(_ => (First: new OnnxSession(thunder, 1), Second: new OnnxSession(heavy, 1))).ToArray();
        var input = new float[256 * 256 * 3];
        Array.Fill(input, 0.5f);
        foreach (var (first, second) in sessions)
        {
            first.Run(input, 1);
            second.Run(input, 1);
        }

        var clock = Stopwatch.StartNew();
        Parallel.ForEach(Partition(frames, sessions), new ParallelOptions { MaxDegreeOfParallelism = workers }, share =>
        {
            for (var i = 0; i < share.Frames; i++)
            {
                share.Sessions.First.Run(input, 1);
                share.Sessions.Second.Run(input, 1);
            }
        });
        var perSecond = frames / clock.Elapsed.TotalSeconds;
        foreach (var (first, second) in sessions)
        {
            first.Dispose();
            second.Dispose();
        }

        return perSecond;
    }

    private static IEnumerable<((OnnxSession First, OnnxSession Second) Sessions, int Frames)> Partition(int frames, (OnnxSession, OnnxSession)[] sessions) =>
        sessions.Select((s, i) => (s, (frames / sessions.Length) + (i < frames % sessions.Length ? 1 : 0)));
}
