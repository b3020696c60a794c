using System.Threading.Channels;
using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Lets the detector look at the frames of the first pass, on its sessions side by side.</summary>
public sealed class Scout(ObjectDetector detector)
{
    /// <summary>Frames that may wait decoded: enough to keep the detectors fed, few enough to hold memory.</summary>
    private const int Waiting = 4;

    /// <summary>Reads all frames, disposing each, and tells what is seen in them.</summary>
    /// <param name="frames">Times increasing, all of one size.</param>
    /// <param name="scoreMinimum">Lowest score kept, 0..1; null for the detector's own.</param>
    /// <param name="known">What was seen at some times already; frames of these times are not looked at again.</param>
    /// <returns>In order of time.</returns>
    public async Task<IReadOnlyList<Look>> LookAsync(IAsyncEnumerable<Frame> frames, double? scoreMinimum, IReadOnlyDictionary<double, Look>? known, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(frames);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var channel = Channel.CreateBounded<Frame>(new BoundedChannelOptions(Waiting) { SingleWriter = true });
        var looks = new SortedList<double, Look>();
        var feeding = Task.Run(Feed, CancellationToken.None);
        var working = Enumerable.Range(0, detector.Workers).Select(w => Task.Run(() => Work(w), CancellationToken.None)).ToList();
        try
        {
            await Task.WhenAll([feeding, .. working]).ConfigureAwait(false);
        }
        finally
        {
            while (channel.Reader.TryRead(out var left)) left.Dispose();
        }

        return [.. looks.Values];

        async Task Feed()
        {
            Exception? failure = null;
            try
            {
                await foreach (var frame in frames.WithCancellation(stop.Token).ConfigureAwait(false)) await WriteOrDispose(frame).ConfigureAwait(false);
            }
            catch (Exception e)
            {
                failure = e;
                throw;
            }
            finally
            {
                channel.Writer.TryComplete(failure);
            }
        }

        async Task WriteOrDispose(Frame frame)
        {
            try
            {
                await channel.Writer.WriteAsync(frame, stop.Token).ConfigureAwait(false);
            }
            catch
            {
                frame.Dispose();
                throw;
            }
        }

        async Task Work(int worker)
        {
            try
            {
                await foreach (var frame in channel.Reader.ReadAllAsync(stop.Token).ConfigureAwait(false))
                {
                    using (frame)
                    {
                        var look = known?.GetValueOrDefault(frame.TimeSeconds) ?? new Look(frame.TimeSeconds, detector.Detect(worker, frame, scoreMinimum));
                        lock (looks) looks.Add(frame.TimeSeconds, look);
                    }
                }
            }
            catch
            {
                await stop.CancelAsync().ConfigureAwait(false);
                throw;
            }
        }
    }
}
