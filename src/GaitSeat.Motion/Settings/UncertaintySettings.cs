using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>
/// Standard errors. The biases are steady offsets between where a model puts a point and the joint: the same through a stride, so averaging does not help.
/// Needham 2021 found 30 to 50 mm at hip and knee and 1 to 15 mm at the ankle against markers (about 4 to 6 % and 1 % of a leg, whole distance);
/// on rendered riders with known joints the thigh came out some 2 to 4 deg low, which two points 1.75 % of a leg off on each axis explain. Each is one axis, one standard deviation.
/// </summary>
public sealed record UncertaintySettings
{
    /// <summary>Draws of the Monte Carlo a stride. 64 draws give a standard error known to 9 % (closed form).</summary>
    [Range(8, 10000)]
    public int Draws { get; init; } = 64;

    /// <summary>Seed of the Monte Carlo.</summary>
    [Range(0, int.MaxValue)]
    public int Seed { get; init; } = 20240611;

    /// <summary>Steady error of the hip point, percent of leg length. See the record's remarks.</summary>
    [Range(0.0, 20.0)]
    public double HipBiasPctLeg { get; init; } = 1.75;

    /// <summary>Steady error of the knee point, percent of leg length.</summary>
    [Range(0.0, 20.0)]
    public double KneeBiasPctLeg { get; init; } = 1.75;

    /// <summary>Steady error of the ankle point, percent of leg length.</summary>
    [Range(0.0, 20.0)]
    public double AnkleBiasPctLeg { get; init; } = 1.0;

    /// <summary>Steady error of heel and toe, percent of leg length: a boot hides both. Measured: the model's toe lay 5 to 10 % of rider height from the truth on made and rendered riders; in cycling, seated too, ankle angles were 15 to 22 deg off (J Sports Sci 2023, doi:10.1080/02640414.2023.2194725).</summary>
    [Range(0.0, 20.0)]
    public double FootBiasPctLeg { get; init; } = 10.0;

    /// <summary>Steady error of the shoulder point, percent of leg length. No source: taken as the hip's.</summary>
    [Range(0.0, 20.0)]
    public double ShoulderBiasPctLeg { get; init; } = 2.0;

    /// <summary>Steady error of the ear point, percent of leg length. No source: a helmet hides it.</summary>
    [Range(0.0, 20.0)]
    public double EarBiasPctLeg { get; init; } = 2.0;

    /// <summary>Steady error of the wrist point, percent of leg length. No source.</summary>
    [Range(0.0, 20.0)]
    public double WristBiasPctLeg { get; init; } = 1.5;

    /// <summary>Relative error of a motion's size (rise, swing, travel): models follow a moving joint a little short. On rendered riders the rise came out at 0.80 to 1.02 of the truth.</summary>
    [Range(0.0, 0.5)]
    public double GainRelativeSe { get; init; } = 0.08;

    /// <summary>Noise of a point, each axis, over the scatter of the models' disagreement on it. Two models with like independent errors: the mean of both errs by half the standard deviation of their difference, and the distance scatters by 0.66 to 1 of that (closed form, no offset to large offset): 0.5 to 0.76.</summary>
    [Range(0.0, 2.0)]
    public double SpreadShare { get; init; } = 0.65;

    /// <summary>Steady error of the stirrup drift swing, percent of leg length: a foot that tips moves the tread's point. On rendered riders with no swing, exact heel and toe points showed 0.6 to 1 cm, model points 0.5 to 2.6 cm.</summary>
    [Range(0.0, 10.0)]
    public double FootSwingSePctLeg { get; init; } = 1.25;

    /// <summary>Relative error of leg length as it shows in the picture (hip and knee points, the thigh standing out sideways): it scales every percent of leg length. Two points 2 % off give 3 %, the thigh's slant 2 %.</summary>
    [Range(0.0, 0.5)]
    public double LegLengthRelativeSe { get; init; } = 0.035;

    /// <summary>Share of the frame interval that a sit instant may be wrong by beyond the noise, one standard deviation. No source: instants are read between frames from a smooth curve; without that it would be 0.29 (even spread over one frame).</summary>
    [Range(0.0, 1.0)]
    public double FrameTimingShare { get; init; } = 0.1;
}
