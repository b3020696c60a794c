using GaitSeat.Faults;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Motion;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Clips;

/// <summary>Everything measured in one clip, and where everybody was in it.</summary>
public sealed record ClipMeasurement(ClipInfo Info, RiderPath People, Sightings Sightings, ClipMotion Motion, IReadOnlyList<Finding> Findings, IReadOnlyList<LeftOut> LeftOut)
{
    /// <summary>How it was read, and is to be read once more for its pictures, so that they show what was measured.</summary>
    public ReadSettings Read { get; init; } = new();
}

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
        var found = await new FirstPass(workshop.Ffmpeg, workshop.Detector, _settings).RunAsync(info, ct);
        if (found.Path.Spans.Count == 0) throw NobodyIn(path, found.Path.MissingReason);
        var seen = await new Follower(new FrameReader(workshop.Ffmpeg, FrameColours.Planes), workshop.Points, _settings).FollowAsync(info, found, progress, ct);
        if (seen.TimeSeconds.Length == 0) throw new ClipSetAsideException("no_frames", $"no frame of {Path.GetFileName(path)} could be decoded");
        return seen with { Unread = found.Unread, Read = found.Read };
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
        return new(seen.Info, seen.People, sightings, motion, findings, [.. seen.Unread, .. motion.LeftOut]) { Read = seen.Read };
    }

    private static ClipSetAsideException NobodyIn(string path, string? reason) => new(reason ?? "no_rider", $"{Path.GetFileName(path)}: {Why(reason)}");

    private static string Why(string? reason) => reason switch
    {
        "no_frames" => "no frame could be decoded",
        "no_horse" => "no rider on a horse was found: there is a person, but no horse under them",
        _ => "no rider on a horse was found; a rider side-on and at least 100 px tall is needed",
    };
}
