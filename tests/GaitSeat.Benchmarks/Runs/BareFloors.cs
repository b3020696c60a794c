using System.Diagnostics;
using System.Runtime.CompilerServices;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Models;

namespace GaitSeat.Benchmarks;

/// <summary>What a run over a clip cannot do without, and nothing else, s by the clock.</summary>
/// <param name="Frames">Frames of the clip.</param>
/// <param name="DecodeSeconds">All of them decoded and let go.</param>
/// <param name="InferenceSeconds">The models, as often as the run asked them, by as many callers as it has workers.</param>
/// <param name="TogetherSeconds">The frames that were followed decoded once, and the models as often, both at once: decoding takes cores from the models, so no run comes nearer to the slower floor than this.</param>
internal readonly record struct FloorTimes(int Frames, double DecodeSeconds, double InferenceSeconds, double TogetherSeconds)
{
    public double SlowerSeconds => Math.Max(DecodeSeconds, InferenceSeconds);
}

/// <summary>Measures the bare floors of a run. Quoted as ratios, because machines are noisy.</summary>
internal sealed class BareFloors(FfmpegTools ffmpeg, ModelStore models, PipelineSettings settings)
{
    /// <summary>The models alone and both at once take turns in shares of the work, so that a machine that is now faster and now slower does not decide between them.</summary>
    private const int Shares = 10;

    /// <param name="info">The clip.</param>
    /// <param name="seen">What the run saw of it: the second model does not read every frame of a fast clip.</param>
    /// <param name="detections">How often the detector is to run.</param>
    public async Task<FloorTimes> MeasureAsync(ClipInfo info, SeenClip seen, int detections, CancellationToken ct)
    {
        using var inference = new InferenceFloor(models, settings.Run.PointWorkers,
            (ModelCatalogue.NanoDet, detections),
            (ModelCatalogue.MoveNetThunder, seen.Poses.Count(p => p is not null)),
            (ModelCatalogue.BlazePoseHeavy, seen.Poses.Count(p => p?.Second is not null)));
        await using var all = ReadAsync(info, [settings.Read], ct).GetAsyncEnumerator(ct);
        var decoded = 0;
        var decode = await SecondsAsync(async () => decoded = await DropAsync(all, int.MaxValue));
        var spans = seen.People.Spans.Select(s => settings.Read with { StartSeconds = s.StartSeconds, EndSeconds = s.EndSeconds });
        await using var followed = ReadAsync(info, spans, ct).GetAsyncEnumerator(ct);
        var (alone, together, frames) = (0.0, 0.0, (seen.TimeSeconds.Length + Shares - 1) / Shares);
        for (var share = 0; share < Shares; share++)
        {
            var now = share;
            alone += await SecondsAsync(() => Task.Run(() => inference.Run(now, Shares), ct));
            together += await SecondsAsync(() => Task.WhenAll(Task.Run(() => inference.Run(now, Shares), ct), Task.Run(() => DropAsync(followed, frames), ct)));
        }

        return new(decoded, decode, alone, together);
    }

    private async IAsyncEnumerable<Frame> ReadAsync(ClipInfo info, IEnumerable<ReadSettings> parts, [EnumeratorCancellation] CancellationToken ct)
    {
        foreach (var part in parts)
        {
            await foreach (var frame in new FrameReader(ffmpeg, FrameColours.Planes).ReadAsync(info, part, ct)) yield return frame;
        }
    }

    /// <summary>Takes so many frames, or as many as there are.</summary>
    private static async Task<int> DropAsync(IAsyncEnumerator<Frame> frames, int count)
    {
        var taken = 0;
        for (; taken < count && await frames.MoveNextAsync(); taken++) frames.Current.Dispose();
        return taken;
    }

    private static async Task<double> SecondsAsync(Func<Task> work)
    {
        var clock = Stopwatch.StartNew();
        await work();
        return clock.Elapsed.TotalSeconds;
    }
}
