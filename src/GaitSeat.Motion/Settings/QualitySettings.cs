using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>When a stride gets a word of care. It is measured all the same.</summary>
public sealed record QualitySettings
{
    /// <summary>Scale error over the scale above which a stride is <c>scale_uncertain</c>. Common practice, no source.</summary>
    [Range(0.0, 1.0)]
    public double MaxScaleRelativeSe { get; init; } = 0.08;

    /// <summary>Difference of rise and over-stirrup rise, share of the larger, above which they <c>disagree</c>. No source.</summary>
    [Range(0.0, 2.0)]
    public double MaxRiseDisagreement { get; init; } = 0.4;

    /// <summary>View yaw above which a stride is <c>turned</c>, deg: at 15 deg a level limb shows 3.4 % short (closed form).</summary>
    [Range(0.0, 45.0)]
    public double TurnedDeg { get; init; } = 15;

    /// <summary>Rider height below which a stride has a <c>small_rider</c>, px: models lose accuracy below about 70 px, ask for 100 (own trial).</summary>
    [Range(0.0, 2000.0)]
    public double SmallRiderPx { get; init; } = 150;

    /// <summary>Rider height below which a stride is not to be trusted (<c>untrusted_small_rider</c>), px: intervals of made clips held in six of ten strides there.</summary>
    [Range(0.0, 2000.0)]
    public double UntrustedRiderPx { get; init; } = 125;

    /// <summary>Least share of a stride's frames in which the rider was followed, 0..1; below it the stride is not to be trusted (<c>untrusted_points</c>). What is left out there is seen poorly in the frames beside it, too: on made clips the thigh angle was 7 deg off and its interval held in two of three strides.</summary>
    [Range(0.0, 1.0)]
    public double LeastFollowedShare { get; init; } = 0.8;

    /// <summary>Frames a stride below which it has <c>few_frames</c>: five to ten times the highest frequency of use, 2.8 Hz (common practice).</summary>
    [Range(2.0, 200.0)]
    public double LeastFramesAStride { get; init; } = 14;
}
