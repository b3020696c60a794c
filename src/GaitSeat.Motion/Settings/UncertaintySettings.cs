using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>
/// Standard errors. The biases are what is left, from rider to rider, of the steady offset between a model's point and the joint after <see cref="JointSettings"/>: the same through a stride,
/// so averaging does not help. Each is one axis, one standard deviation, set so that 95 % intervals hold the truth in nine to ten of ten strides of 60 made clips of all conditions (wide set,
/// seed 7) and of five clips of another renderer; the spread between riders on real pictures (hip 4 %, knee 2 to 3 %, toe 5 % of a leg; single frames, marker's noise taken off) is larger,
/// so on real riders they may be too small. See docs/accuracy.md and docs/real-footage-check.md.
/// </summary>
public sealed record UncertaintySettings
{
    /// <summary>Draws of the Monte Carlo a stride. 64 draws give a standard error known to 9 % (closed form).</summary>
    [Range(8, 10000)]
    public int Draws { get; init; } = 64;

    /// <summary>Seed of the Monte Carlo.</summary>
    [Range(0, int.MaxValue)]
    public int Seed { get; init; } = 20240611;

    /// <summary>Steady error of the hip point, percent of leg length.</summary>
    [Range(0.0, 20.0)]
    public double HipBiasPctLeg { get; init; } = 2;

    /// <summary>Steady error of the knee point, percent of leg length.</summary>
    [Range(0.0, 20.0)]
    public double KneeBiasPctLeg { get; init; } = 2;

    /// <summary>Steady error of the ankle point, percent of leg length.</summary>
    [Range(0.0, 20.0)]
    public double AnkleBiasPctLeg { get; init; } = 2.5;

    /// <summary>Steady error of heel and toe, percent of leg length: a boot hides both. In cycling, seated too, ankle angles were 15 to 22 deg off (J Sports Sci 2023, doi:10.1080/02640414.2023.2194725).</summary>
    [Range(0.0, 20.0)]
    public double FootBiasPctLeg { get; init; } = 3.3;

    /// <summary>Steady error of the shoulder point, percent of leg length.</summary>
    [Range(0.0, 20.0)]
    public double ShoulderBiasPctLeg { get; init; } = 2.5;

    /// <summary>Steady error of the ear point, percent of leg length. No source: a helmet hides it.</summary>
    [Range(0.0, 20.0)]
    public double EarBiasPctLeg { get; init; } = 2.0;

    /// <summary>Steady error of the wrist point, percent of leg length. No source.</summary>
    [Range(0.0, 20.0)]
    public double WristBiasPctLeg { get; init; } = 1.5;

    /// <summary>Relative error of a motion's size (rise, swing, travel): models follow a moving joint a little short. With the trunk held to its length the rise comes out at 0.95 to 1.03 of the truth on rendered and made riders; the raw models gave 0.80 to 1.02.</summary>
    [Range(0.0, 0.5)]
    public double GainRelativeSe { get; init; } = 0.06;

    /// <summary>Noise of a point, each axis, over the scatter of the models' disagreement on it. Two models with like independent errors: the mean of both errs by half the standard deviation of their difference, and the distance scatters by 0.66 to 1 of that (closed form, no offset to large offset): 0.5 to 0.76. Less is taken, because the smoothing has averaged part of it away.</summary>
    [Range(0.0, 2.0)]
    public double SpreadShare { get; init; } = 0.35;

    /// <summary>Steady error of the stirrup drift swing, percent of leg length: a foot that tips moves the tread's point. On rendered riders with no swing, exact heel and toe points showed 0.6 to 1 cm, model points 0.5 to 2.6 cm.</summary>
    [Range(0.0, 10.0)]
    public double FootSwingSePctLeg { get; init; } = 1.25;

    /// <summary>What part of the difference between rise and over-stirrup rise is taken for the rise's own error, 0..1. On made clips of all conditions.</summary>
    [Range(0.0, 2.0)]
    public double DisagreementOfRise { get; init; } = 0.3;

    /// <summary>The same for what hangs on the foot: over-stirrup rise, drift, stirrup length index.</summary>
    [Range(0.0, 2.0)]
    public double DisagreementOfFoot { get; init; } = 0.7;

    /// <summary>What the models cannot resolve of a movement's size, analysis px: it tells on small riders. On made clips of all conditions.</summary>
    [Range(0.0, 10.0)]
    public double PixelSe { get; init; } = 0.6;

    /// <summary>Relative error of leg length as it shows in the picture (hip and knee points, the thigh standing out sideways): it scales every percent of leg length. Two points 2 % off give 3 %, the thigh's slant 2 %.</summary>
    [Range(0.0, 0.5)]
    public double LegLengthRelativeSe { get; init; } = 0.035;

    /// <summary>Share of the frame interval that a sit instant may be wrong by beyond the noise, one standard deviation. An instant that falls anywhere within a frame has 0.29 (even spread).</summary>
    [Range(0.0, 1.0)]
    public double FrameTimingShare { get; init; } = 0.3;
}
