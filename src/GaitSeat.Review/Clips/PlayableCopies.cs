using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Review.Web;
using GaitSeat.Store;

namespace GaitSeat.Review.Clips;

/// <summary>
/// Copies of clips in a form every browser plays, made when one cannot play the clip itself: H.264 in MP4, picture for picture at the time it was measured at, without sound and metadata. They lie in the
/// dataset under the clip's key, where an erasure finds them.
/// </summary>
internal sealed class PlayableCopies(string datasetFolder) : IDisposable
{
    /// <summary>A picture at the first key frame before it is soon found: the page jumps from sit to sit.</summary>
    private static readonly EncodeSettings Encoding = new() { Crf = 21, KeyFrameInterval = 12 };

    /// <summary>As the clips are measured; all frames, since a coach steps through them.</summary>
    private static readonly ReadSettings Reading = new() { MaxRateHz = 1000 };

    /// <summary>One at a time: FFmpeg takes every core.</summary>
    private readonly SemaphoreSlim _guard = new(1);

    /// <returns>Null where none was made.</returns>
    internal string? Find(string clipKey) => PathOf(clipKey) is var path && File.Exists(path) ? path : null;

    /// <param name="mayKeep">Asked again when the copy is whole: a rider may be forgotten meanwhile.</param>
    /// <exception cref="ReviewException">The clip cannot be decoded, or there is no room for the copy.</exception>
    internal async Task MakeAsync(string clipKey, string clipPath, Func<bool> mayKeep, CancellationToken cancellationToken)
    {
        await _guard.WaitAsync(cancellationToken);
        try
        {
            if (Find(clipKey) is not null) return;
            var path = PathOf(clipKey);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            await EncodeAsync(clipPath, path, cancellationToken);
            if (!mayKeep()) File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ClipSetAsideException or FfmpegNotFoundException)
        {
            throw new ReviewException($"No copy that a browser plays could be made: {e.Message}", e);
        }
        finally
        {
            _guard.Release();
        }
    }

    public void Dispose() => _guard.Dispose();

    private string PathOf(string clipKey) => Path.Combine(ReviewCopies.FolderOf(datasetFolder), ReviewCopies.NameOf(clipKey));

    private static async Task EncodeAsync(string clipPath, string path, CancellationToken cancellationToken)
    {
        var tools = FfmpegTools.Locate();
        var clip = await new ClipProbe(tools, new()).ProbeAsync(clipPath, cancellationToken);
        var (width, height) = FrameReader.AnalysisSize(clip, Reading);
        var rate = double.IsFinite(clip.AverageFrameRateHz) && clip.AverageFrameRateHz > 0 ? clip.AverageFrameRateHz : 25;
        await using var encoder = new ClipEncoder(tools, path, width, height, rate, Encoding);
        await foreach (var frame in new FrameReader(tools).ReadAsync(clip, Reading, cancellationToken))
        {
            using (frame) await encoder.WriteAsync(frame.Memory, frame.TimeSeconds, cancellationToken);
        }

        await encoder.FinishAsync(cancellationToken);
    }
}
