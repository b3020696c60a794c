using System.Threading.Channels;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Flow;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Clips;

/// <summary>
/// The second pass over a clip: within the spans the scout found, every frame is decoded, its flow taken and its body points read, all three at once
/// over bounded channels, so that memory does not grow with the clip's pixels.
/// </summary>
internal sealed class Follower(FrameReader reader, BodyPointReader points, PipelineSettings settings)
{
    /// <param name="clip">The probed clip.</param>
    /// <param name="found">Where the rider is, and how the clip is to be read.</param>
    /// <param name="progress">Told the number of frames done.</param>
    /// <param name="ct">Stops between frames.</param>
    public async Task<SeenClip> FollowAsync(ClipInfo clip, FirstPassResult found, IProgress<int>? progress, CancellationToken ct)
    {
        var seen = new FollowedFrames();
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(ct);
        var forFlow = Channel.CreateBounded<FrameJob>(settings.Run.FramesAhead);
        var forPoints = Channel.CreateBounded<FrameJob>(settings.Run.FramesAhead);
        Task[] tasks =
        [
            Task.Run(() => DecodeAsync(clip, found, seen, forFlow.Writer, forPoints.Writer, stop.Token), CancellationToken.None),
            Task.Run(() => FlowAsync(forFlow.Reader, seen, stop.Token), CancellationToken.None),
            .. Enumerable.Range(0, settings.Run.PointWorkers).Select(w => Task.Run(() => PointsAsync(w, forPoints.Reader, seen, progress, stop.Token), CancellationToken.None)),
        ];
        await AllOrFirstFailureAsync(tasks, stop);
        var (widthPx, heightPx) = FrameReader.AnalysisSize(clip, found.Read);
        return seen.Collect(clip, found.Path, widthPx, heightPx);
    }

    /// <summary>One span after the other: while the workers still have frames of one, the next is being decoded.</summary>
    private async Task DecodeAsync(ClipInfo clip, FirstPassResult found, FollowedFrames seen, ChannelWriter<FrameJob> flow, ChannelWriter<FrameJob> points, CancellationToken ct)
    {
        try
        {
            foreach (var span in found.Path.Spans)
            {
                var read = found.Read with { StartSeconds = span.StartSeconds, EndSeconds = span.EndSeconds };
                var (turns, nextSeconds, begins) = (0, double.NegativeInfinity, true);
                await foreach (var frame in reader.ReadAsync(clip, read, ct))
                {
                    var t = frame.TimeSeconds;
                    var isTurn = t >= nextSeconds;
                    if (isTurn) nextSeconds = t + settings.BodyPoints.SecondStepSeconds;
                    var job = new FrameJob(seen.Add(t), frame, found.Path.RiderAt(t), found.Path.HorseAt(t), isTurn ? turns++ : null, begins);
                    begins = false;
                    await flow.WriteAsync(job, ct);
                    await points.WriteAsync(job, ct);
                }
            }
        }
        finally
        {
            flow.TryComplete();
            points.TryComplete();
        }
    }

    private async Task FlowAsync(ChannelReader<FrameJob> jobs, FollowedFrames seen, CancellationToken ct)
    {
        var flow = new PatchFlow(settings.Flow);
        await foreach (var job in jobs.ReadAllAsync(ct))
        {
            if (job.BeginsSpan) flow = new PatchFlow(settings.Flow);
            seen.SetFlow(job.Number, flow.Next(job.Frame, new FlowHints(job.Rider, job.Horse, null)));
            job.Done();
        }
    }

    private async Task PointsAsync(int worker, ChannelReader<FrameJob> jobs, FollowedFrames seen, IProgress<int>? progress, CancellationToken ct)
    {
        await foreach (var job in jobs.ReadAllAsync(ct))
        {
            if (job.Rider is { } rider) seen.SetPose(job.Number, points.Read(worker, job.Frame, rider, job.SecondTurn));
            job.Done();
            progress?.Report(job.Number + 1);
        }
    }

    /// <summary>Waits for all; the first that fails stops the others, and its exception is the one that is seen.</summary>
    private static async Task AllOrFirstFailureAsync(Task[] tasks, CancellationTokenSource stop)
    {
        var open = tasks.ToList();
        Task? failed = null;
        while (open.Count > 0)
        {
            var done = await Task.WhenAny(open);
            open.Remove(done);
            if (done.IsCompletedSuccessfully || failed is not null) continue;
            failed = done;
            await stop.CancelAsync();
        }

        if (failed is not null) await failed;
    }
}
