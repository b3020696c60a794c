using GaitSeat.Faults;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Motion;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Clips;

/// <summary>Everything measured in one clip, and where everybody was in it.</summary>
public sealed record ClipMeasurement(ClipInfo Info, RiderPath People, Sightings Sightings, ClipMotion Motion, IReadOnlyList<Finding> Findings, IReadOnlyList<LeftOut> LeftOut);

/// <summary>One clip from file to findings: probe, scout, follow, motion, rules. Writes nothing.</summary>
public sealed class ClipMeasurer(Workshop workshop)
{
    private readonly PipelineSettings _settings = workshop.Settings;

    /// <param name="path">The clip.</param>
    /// <param name="lengths">What the sheet says of the rider's size.</param>
    /// <param name="progress">Told the number of frames followed so far.</param>
    /// <param name="ct">Stops between frames.</param>
    /// <exception cref="ClipSetAsideException">The clip cannot be measured; carries the reason.</exception>
    public async Task<ClipMeasurement> MeasureAsync(string path, BodyLengths lengths, IProgress<int>? progress, CancellationToken ct) =>
        Measure(await SeeAsync(path, progress, ct), lengths, _settings);

    /// <summary>The costly part: probe, scout, follow.</summary>
    /// <inheritdoc cref="MeasureAsync"/>
    public async Task<SeenClip> SeeAsync(string path, IProgress<int>? progress, CancellationToken ct)
    {
        var info = await new ClipProbe(workshop.Ffmpeg, _settings.Probe).ProbeAsync(path, ct);
        var reader = new FrameReader(workshop.Ffmpeg, FrameColours.Planes);
        // The first pass reads the whole clip, so what the decoder has to say is heard once, there.
        var report = new ReadReport();
        var rider = await ScoutAsync(reader, info, report, ct);
        var seen = await new Follower(reader, workshop.Points, _settings).FollowAsync(info, rider, progress, ct);
        if (seen.TimeSeconds.Length == 0) throw new ClipSetAsideException("no_frames", $"no frame of {Path.GetFileName(path)} could be decoded");
        return seen with { Unread = report.LeftOut };
    }

    /// <summary>The quick part: fusion of the body points, motion, rules. Pure.</summary>
    public static ClipMeasurement Measure(SeenClip seen, BodyLengths lengths, PipelineSettings settings)
    {
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentNullException.ThrowIfNull(settings);
        var fusion = new PointFusion(settings.BodyPoints);
        var sightings = fusion.Fuse(seen.TimeSeconds, seen.Poses, seen.People, seen.Trunk, seen.Surroundings, seen.CutBefore, seen.WidthPx, seen.HeightPx);
        var motion = MotionAnalysis.Analyse(sightings, lengths, settings.Motion);
        var findings = RuleFindings.Find(motion.Spells, motion.Strides, settings.Rules);
        return new(seen.Info, seen.People, sightings, motion, findings, [.. seen.Unread, .. motion.LeftOut]);
    }

    private async Task<RiderPath> ScoutAsync(FrameReader reader, ClipInfo info, ReadReport report, CancellationToken ct)
    {
        var read = _settings.Read with { MaxRateHz = _settings.Scout.RateHz };
        var path = await new Scout(workshop.Detector, _settings.Scout).ScoutAsync(reader.ReadAsync(info, read, report, ct), ct);
        return path.Spans.Count > 0
            ? path
            : throw new ClipSetAsideException(path.MissingReason ?? "no_rider", $"{Path.GetFileName(info.Path)}: {Why(path.MissingReason)}");
    }

    private static string Why(string? reason) => reason switch
    {
        "no_frames" => "no frame could be decoded",
        "no_horse" => "no rider on a horse was found: there is a person, but no horse under them",
        _ => "no rider on a horse was found; a rider side-on and at least 100 px tall is needed",
    };
}
