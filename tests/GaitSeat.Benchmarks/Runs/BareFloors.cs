using System.Diagnostics;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Models;

namespace GaitSeat.Benchmarks;

/// <summary>What a run over a clip cannot do without, and nothing else, s by the clock.</summary>
/// <param name="DecodeSeconds">Every frame of the clip decoded and let go.</param>
/// <param name="InferenceSeconds">The models, as often as the run asked them, on as many sessions as it has workers.</param>
/// <param name="TogetherSeconds">The frames that were followed decoded once, and the models as often, both at once: decoding takes cores from the models, so no run comes nearer to the slower floor than this.</param>
internal readonly record struct FloorTimes(double DecodeSeconds, double InferenceSeconds, double TogetherSeconds)
{
    public double SlowerSeconds => Math.Max(DecodeSeconds, InferenceSeconds);
}

/// <summary>Measures the bare floors of a run. Quoted as ratios, because machines are noisy.</summary>
internal sealed class BareFloors(FfmpegTools ffmpeg, ModelStore models, PipelineSettings settings)
{
    /// <param name="info">The clip.</param>
    /// <param name="seen">What the run saw of it: the second model does not read every frame of a fast clip.</param>
    /// <param name="detections">How often the detector is to run.</param>
    public async Task<FloorTimes> MeasureAsync(ClipInfo info, SeenClip seen, int detections, CancellationToken ct)
    {
        using var inference = new InferenceFloor(models, settings.Run.PointWorkers,
            (ModelCatalogue.NanoDet, detections),
            (ModelCatalogue.MoveNetThunder, seen.Poses.Count(p => p is not null)),
            (ModelCatalogue.BlazePoseHeavy, seen.Poses.Count(p => p?.Second is not null)));
        return new(
            await SecondsAsync(() => DecodeAsync(info, settings.Read, ct)),
            await SecondsAsync(() => Task.Run(inference.Run, ct)),
            await SecondsAsync(() => Task.WhenAll(Task.Run(inference.Run, ct), Task.Run(() => DecodeSpansAsync(info, seen, ct), ct))));
    }

    private async Task DecodeSpansAsync(ClipInfo info, SeenClip seen, CancellationToken ct)
    {
        foreach (var span in seen.People.Spans)
            await DecodeAsync(info, settings.Read with { StartSeconds = span.StartSeconds, EndSeconds = span.EndSeconds }, ct);
    }

    private async Task DecodeAsync(ClipInfo info, ReadSettings read, CancellationToken ct)
    {
        await foreach (var frame in new FrameReader(ffmpeg, FrameColours.Planes).ReadAsync(info, read, ct)) frame.Dispose();
    }

    private static async Task<double> SecondsAsync(Func<Task> work)
    {
        var clock = Stopwatch.StartNew();
        await work();
        return clock.Elapsed.TotalSeconds;
    }
}
