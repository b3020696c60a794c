using System.Runtime.CompilerServices;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Clips;

/// <summary>What the first pass over a clip found.</summary>
/// <param name="Path">The rider, or why there is none.</param>
/// <param name="Unread">What the decoder could not read.</param>
/// <param name="Detections">How often the detector ran.</param>
/// <param name="Read">How the clip is to be read again, so that every reading gives the same pictures.</param>
public sealed record FirstPassResult(RiderPath Path, IReadOnlyList<LeftOut> Unread, int Detections, ReadSettings Read);

/// <summary>
/// The first pass over a clip: where is the rider? A long clip is glanced through first, so that its cost follows who is in view and not its length: only key frames are decoded, and looks are taken
/// only where these show somebody.
/// </summary>
/// <remarks>
/// What the decoder has to say is heard here. Where it says anything at all, of key frames or of the parts looked at, the whole clip is looked through. A fault in a part that shows nobody is not heard of: nothing is measured there.
/// A clip with faults is looked through once more with a single decoder thread, and read so from then on: with several, what a damaged frame is patched from depends on which thread got how far, and each reading shows other pictures.
/// </remarks>
public sealed class FirstPass(FfmpegTools ffmpeg, ObjectDetector detector, PipelineSettings settings)
{
    private readonly Scout _scout = new(detector);
    private readonly FrameReader _reader = new(ffmpeg, FrameColours.Planes);
    private readonly ReadSettings _read = settings.Read with { MaxRateHz = settings.Scout.RateHz };

    /// <exception cref="ClipSetAsideException">No frame could be decoded.</exception>
    public async Task<FirstPassResult> RunAsync(ClipInfo clip, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(clip);
        var found = MayGlance(clip) ? await GlancedAsync(clip, ct) : await LookThroughoutAsync(clip, [], ct);
        if (found is not null && (found.Unread.Count == 0 || settings.Read.DecoderThreads == 1)) return found;
        return await new FirstPass(ffmpeg, detector, settings with { Read = settings.Read with { DecoderThreads = 1 } }).LookThroughoutAsync(clip, [], ct);
    }

    // Two fields make a frame, and deinterlacing needs its neighbours: a key frame alone is not the same picture. A chosen part of a clip is meant to be seen.
    private bool MayGlance(ClipInfo clip) =>
        clip.DurationSeconds >= settings.Scout.GlanceFromSeconds && clip is { Interlaced: false, AverageFrameRateHz: > 0 } && _read is { StartSeconds: null, EndSeconds: null };

    /// <summary>Null where the decoder complained of what was looked at.</summary>
    private async Task<FirstPassResult?> GlancedAsync(ClipInfo clip, CancellationToken ct)
    {
        if (await GlanceAsync(clip, ct) is not { } glances) return null;
        var worth = Glances.WorthALook(glances, settings.Scout);
        return worth is [{ StartSeconds: 0 }] ? await LookThroughoutAsync(clip, glances, ct) : await LookWhereWorthAsync(clip, glances, worth, ct);
    }

    /// <summary>Null where a key frame is damaged.</summary>
    private async Task<IReadOnlyList<Look>?> GlanceAsync(ClipInfo clip, CancellationToken ct)
    {
        var report = new ReadReport();
        var frames = new FrameReader(ffmpeg, FrameColours.Planes, FrameChoice.KeyFrames).ReadAsync(clip, _read with { MaxRateHz = GlanceRateHz }, report, ct);
        var glances = await _scout.LookAsync(frames, LowestScore, null, ct);
        return report.LeftOut.Count > 0 ? null : glances;
    }

    private async Task<FirstPassResult> LookThroughoutAsync(ClipInfo clip, IReadOnlyList<Look> glances, CancellationToken ct)
    {
        var (report, known) = (new ReadReport(), AsLooks(glances));
        var looks = await _scout.LookAsync(_reader.ReadAsync(clip, _read, report, ct), null, known, ct);
        return new(Choose(clip, looks), report.LeftOut, Detections(glances, looks, known), settings.Read);
    }

    private async Task<FirstPassResult?> LookWhereWorthAsync(ClipInfo clip, IReadOnlyList<Look> glances, IReadOnlyList<TimeSpanSeconds> worth, CancellationToken ct)
    {
        var grid = new LookGrid(FrameReader.StepSeconds(clip, _read), 1 / clip.AverageFrameRateHz);
        var (reports, known) = (new List<ReadReport>(), AsLooks(glances));
        var looks = await _scout.LookAsync(PartsAsync(clip, worth, grid, reports, ct), null, known, ct);
        var sound = reports[^1].FramesRead > 0 && reports.TrueForAll(r => r.LeftOut.Count == 0);
        return sound ? new(Choose(clip, grid.Filled(looks)), [], Detections(glances, looks, known), settings.Read) : null;
    }

    private async IAsyncEnumerable<Frame> PartsAsync(ClipInfo clip, IReadOnlyList<TimeSpanSeconds> parts, LookGrid grid, List<ReadReport> reports, [EnumeratorCancellation] CancellationToken ct)
    {
        foreach (var part in parts)
        {
            reports.Add(new());
            double? end = double.IsFinite(part.EndSeconds) ? part.EndSeconds : null;
            var start = grid.StartOf(part.StartSeconds);
            if (end <= start) continue;
            await foreach (var frame in _reader.ReadAsync(clip, _read with { StartSeconds = start, EndSeconds = end }, reports[^1], ct)) yield return frame;
        }
    }

    private Dictionary<double, Look> AsLooks(IReadOnlyList<Look> glances) =>
        glances.ToDictionary(g => g.TimeSeconds, g => g with { Seen = [.. g.Seen.Where(d => d.Score >= settings.Detector.ScoreMinimum)] });

    private static int Detections(IReadOnlyList<Look> glances, IReadOnlyList<Look> looks, Dictionary<double, Look> known) => glances.Count + looks.Count(l => !known.ContainsKey(l.TimeSeconds));

    // Of key frames closer together than need be, as many are glanced at as keep two glances within the limit.
    private double GlanceRateHz => 2 / settings.Scout.GlanceApartMaximumSeconds;

    private double LowestScore => Math.Min(settings.Scout.GlanceScoreMinimum, settings.Detector.ScoreMinimum);

    private RiderPath Choose(ClipInfo clip, IReadOnlyList<Look> looks)
    {
        var (widthPx, heightPx) = FrameReader.AnalysisSize(clip, _read);
        return RiderChoice.Choose(looks, widthPx, heightPx, settings.Scout);
    }
}
