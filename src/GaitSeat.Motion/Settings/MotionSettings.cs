namespace GaitSeat.Motion;

/// <summary>Everything the maths may be told: one nested record for each of its steps.</summary>
public sealed record MotionSettings
{
    /// <summary>Where a clip is cut and which frames count.</summary>
    public SegmentSettings Segment { get; init; } = new();

    /// <summary>How far the rider is turned out of the picture plane.</summary>
    public ViewSettings View { get; init; } = new();

    /// <summary>Where the models put a point against the joint.</summary>
    public JointSettings Joints { get; init; } = new();

    /// <summary>Outliers and low-pass.</summary>
    public SmoothingSettings Smoothing { get; init; } = new();

    /// <summary>Pixels to centimetres.</summary>
    public ScaleSettings Scale { get; init; } = new();

    /// <summary>Gait windows and spells.</summary>
    public GaitSettings Gait { get; init; } = new();

    /// <summary>Cutting into strides, and the per-stride measures.</summary>
    public StrideSettings Stride { get; init; } = new();

    /// <summary>Words of care.</summary>
    public QualitySettings Quality { get; init; } = new();

    /// <summary>Standard errors.</summary>
    public UncertaintySettings Uncertainty { get; init; } = new();

    /// <summary>Changes of stirrup length, and left against right.</summary>
    public SessionSettings Session { get; init; } = new();
}
