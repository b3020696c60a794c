using System.Threading.Channels;
using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>The first pass over a clip: looks a few times a second, then chooses one rider and horse over the whole of it.</summary>
public sealed class Scout(ObjectDetector detector, ScoutSettings settings)
{
    /// <summary>Frames that may wait decoded: enough to keep the detectors fed, few enough to hold memory.</summary>
    private const int Waiting = 4;

    /// <summary>Reads all frames (disposing each), detects on the detector's sessions side by side, and returns the rider's path.</summary>
    /// <param name="frames">The clip at about <see cref="ScoutSettings.RateHz"/>, all of one size.</param>
    public async Task<RiderPath> ScoutAsync(IAsyncEnumerable<Frame> frames, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(frames);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var channel = Channel.CreateBounded<Frame>(new BoundedChannelOptions(Waiting) { SingleWriter = true });
        var looks = new SortedList<int, Look>();
        (int Width, int Height) size = default;
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

        return RiderChoice.Choose([.. looks.Values], size.Width, size.Height, settings);

        async Task Feed()
        {
            Exception? failure = null;
            try
            {
                await foreach (var frame in frames.WithCancellation(stop.Token).ConfigureAwait(false))
                {
                    size = (frame.WidthPx, frame.HeightPx);
                    await WriteOrDispose(frame).ConfigureAwait(false);
                }
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
                        var look = new Look(frame.TimeSeconds, detector.Detect(worker, frame));
                        lock (looks) looks.Add(frame.Index, look);
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
