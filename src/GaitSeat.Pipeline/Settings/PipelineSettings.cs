using System.ComponentModel.DataAnnotations;
using GaitSeat.Faults;
using GaitSeat.Footage;
using GaitSeat.Footage.Pictures;
using GaitSeat.Motion;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Vision.Flow;
using GaitSeat.Vision.Models;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Settings;

/// <summary>What a run is: every setting a user may change, stage by stage.</summary>
public sealed record PipelineSettings
{
    /// <summary>What may come in.</summary>
    public ProbeSettings Probe { get; init; } = new();

    /// <summary>How clips are decoded for analysis.</summary>
    public ReadSettings Read { get; init; } = new();

    /// <summary>What counts as a sighting of a horse or a person.</summary>
    public DetectorSettings Detector { get; init; } = new();

    /// <summary>First pass: finding horse and rider.</summary>
    public ScoutSettings Scout { get; init; } = new();

    /// <summary>Optical flow: trunk anchor, camera motion, cuts.</summary>
    public FlowSettings Flow { get; init; } = new();

    /// <summary>Second pass: body points.</summary>
    public BodyPointSettings BodyPoints { get; init; } = new();

    /// <summary>The maths: smoothing, gait, strides, measures, uncertainty.</summary>
    public MotionSettings Motion { get; init; } = new();

    /// <summary>Findings by rule, each with its threshold.</summary>
    public RuleSettings Rules { get; init; } = new();

    /// <summary>What is written beside the tables. Changes no number, so it is not part of the pipeline hash.</summary>
    public OutputSettings Output { get; init; } = new();

    /// <summary>How the machine is used. Changes no number, so it is not part of the pipeline hash.</summary>
    public RunSettings Run { get; init; } = new();

    /// <summary>The worker that watches a folder. Changes no number, so it is not part of the pipeline hash.</summary>
    public WatchSettings Watch { get; init; } = new();

    /// <summary>Fault models, flags, queue and drift watch. They work on what was measured and change no measured number, so they are not part of the pipeline hash; what a model was trained with stands in the model.</summary>
    public FaultSettings Faults { get; init; } = new();

    /// <summary>How long things are kept. Changes no number, so it is not part of the pipeline hash.</summary>
    public RetentionSettings Retention { get; init; } = new();
}

/// <summary>What is written for each measured clip besides its rows.</summary>
public sealed record OutputSettings
{
    /// <summary>Whether the per-frame tracks table is written.</summary>
    public bool Tracks { get; init; } = true;

    /// <summary>Whether the overlay video and the two stills are made.</summary>
    public bool Overlay { get; init; } = true;

    /// <summary>Whether the plot of seat motion is made.</summary>
    public bool Plot { get; init; } = true;

    /// <summary>How overlays are drawn.</summary>
    public OverlaySettings Drawing { get; init; } = new();
}

/// <summary>How the machine is used.</summary>
public sealed record RunSettings
{
    /// <summary>Workers that read body points side by side, one thread each; two single threads beat one with two on a 2-core machine (measured, docs/performance.md).</summary>
    [Range(1, 64)]
    public int PointWorkers { get; init; } = 2;

    /// <summary>What the models run on; 'gpu' needs a build with CUDA (docs/performance.md), and falls back to the processor where there is no card. Numbers agree within the models' reference tolerance, as 'gaitseat check' tells.</summary>
    public InferenceDevice Device { get; init; } = InferenceDevice.Cpu;

    /// <summary>Decoded frames that may wait for a worker; bounds memory.</summary>
    [Range(1, 256)]
    public int FramesAhead { get; init; } = 8;

    /// <summary>How often reading a clip is tried when the file is busy or a share is away for a moment.</summary>
    [Range(1, 20)]
    public int ReadAttempts { get; init; } = 4;

    /// <summary>First pause before another try, s; doubled each time.</summary>
    [Range(0.01, 600)]
    public double RetryPauseSeconds { get; init; } = 0.5;
}
