using System.Diagnostics;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Models;

namespace GaitSeat.Benchmarks;

/// <summary>
/// The whole measurement of a clip beside its bare floors: decoding every frame and nothing else, and running the body-point models on a fixed input as
/// often as they read a frame, by as many callers side by side as the run has workers; then both at once.
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
        output.WriteLine("| clip | frames | whole run, frames/s | decode alone | body points alone | both at once | whole / slower floor | whole / both at once |");
        output.WriteLine("|---|---|---|---|---|---|---|---|");
        foreach (var clip in clips)
        {
            var info = await new ClipProbe(ffmpeg, settings.Probe).ProbeAsync(clip, ct);
            await new ClipMeasurer(workshop).MeasureAsync(clip, BodyLengths.Unknown, null, ct);
            var clock = Stopwatch.StartNew();
            var seen = await new ClipMeasurer(workshop).SeeAsync(clip, null, ct);
            var frames = ClipMeasurer.Measure(seen, BodyLengths.Unknown, settings).Sightings.Count;
            var whole = frames / clock.Elapsed.TotalSeconds;
            var floors = await new BareFloors(ffmpeg, models, settings).MeasureAsync(info, seen, detections: 0, ct);
            output.WriteLine(
                $"| {Path.GetFileName(clip)} | {frames} | {whole:0.0} | {floors.Frames / floors.DecodeSeconds:0} | {frames / floors.InferenceSeconds:0.0} | {frames / floors.TogetherSeconds:0.0} | {whole * floors.SlowerSeconds / frames:0.00} | {whole * floors.TogetherSeconds / frames:0.00} |");
        }

        return 0;
    }
}
