using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Footage.Pictures;

/// <summary>What an overlay shows. Sizes are for a picture 1280 px wide and follow its width; text keeps a readable least size.</summary>
public sealed record OverlaySettings
{
    /// <summary>Blur the heads of rider and others beyond recognition. On unless turned off: footage of people goes no further than it must.</summary>
    public bool BlurHeads { get; init; } = true;

    /// <summary>How much larger than the estimated helmet the blurred area is, as a factor. 1.75 covers a point that is off by three eighths of a head on every side.</summary>
    [Range(1, 4)]
    public double HeadPadding { get; init; } = 1.75;

    /// <summary>How far to look forward and back for a head that was missed in a frame, s. 0.5 s: the head moves less than the padding in rising trot, by eye.</summary>
    [Range(0, 5)]
    public double HeadMemorySeconds { get; init; } = 0.5;

    /// <summary>Body points and segments of the near side.</summary>
    public bool ShowBody { get; init; } = true;

    /// <summary>Vertical line through the hip.</summary>
    public bool ShowPlumbLine { get; init; } = true;

    /// <summary>Thigh angle with its number.</summary>
    public bool ShowThighAngle { get; init; } = true;

    /// <summary>The strip along the bottom with the seat motion, stride cuts and the stride's figures.</summary>
    public bool ShowStrip { get; init; } = true;

    /// <summary>Length of time the strip shows, s; about ten strides.</summary>
    [Range(1, 120)]
    public double StripSeconds { get; init; } = 8;

    /// <summary>Height of the strip as a share of the picture's height.</summary>
    [Range(0.05, 0.4)]
    public double StripHeightShare { get; init; } = 0.14;

    /// <summary>How long the marks of sit and top stand, s on either side of the instant.</summary>
    [Range(0, 1)]
    public double FlashSeconds { get; init; } = 0.07;

    /// <summary>Points seen less surely than this (0..1) are not drawn.</summary>
    [Range(0, 1)]
    public double MinimumConfidence { get; init; } = 0.1;

    /// <summary>How the overlay video is written.</summary>
    public EncodeSettings Encode { get; init; } = new();
}
