using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>Pixels to centimetres, by body lengths.</summary>
public sealed record ScaleSettings
{
    /// <summary>Knee joint to ankle joint over stature. Mean of 0.246 (Drillis and Contini 1966), 0.249 (de Leva 1996, both sexes), 0.238 and 0.248 (ANSUR II, men and women).</summary>
    [Range(0.1, 0.4)]
    public double ShankOfStature { get; init; } = 0.246;

    /// <summary>Relative standard error of <see cref="ShankOfStature"/> for one person: 2 % between sources, about 4 % between people of one stature (ANSUR II spread less its stature part).</summary>
    [Range(0.0, 0.5)]
    public double ShankOfStatureRelativeSe { get; init; } = 0.045;

    /// <summary>Hip joint to knee joint over stature. Mean of 0.212 and 0.2425 (de Leva 1996, women and men), 0.233 (ANSUR II), 0.245 (Drillis and Contini 1966).</summary>
    [Range(0.1, 0.4)]
    public double ThighOfStature { get; init; } = 0.233;

    /// <summary>Relative standard error of <see cref="ThighOfStature"/>: the 15 % range between sources as a standard deviation.</summary>
    [Range(0.0, 0.5)]
    public double ThighOfStatureRelativeSe { get; init; } = 0.065;

    /// <summary>Hip joint to shoulder joint over stature: 0.818 - 0.530 (Drillis and Contini 1966).</summary>
    [Range(0.1, 0.5)]
    public double TrunkOfStature { get; init; } = 0.288;

    /// <summary>Relative standard error of <see cref="TrunkOfStature"/>: a bent back shortens it. Common practice, no source.</summary>
    [Range(0.0, 0.5)]
    public double TrunkOfStatureRelativeSe { get; init; } = 0.06;

    /// <summary>How far the thigh stands out sideways round the horse, deg: it is shortened in the picture by the cosine. From the hip joint 9 cm off the middle (X-ray, 500 adults) to a knee 25 cm off it; the width over the saddle has no source.</summary>
    [Range(0.0, 45.0)]
    public double ThighAbductionDeg { get; init; } = 25;

    /// <summary>Standard error of <see cref="ThighAbductionDeg"/>, deg. No source: from a narrow pony to a broad cob.</summary>
    [Range(0.0, 20.0)]
    public double ThighAbductionSeDeg { get; init; } = 8;

    /// <summary>Relative standard error of a body length measured by tape. Common practice, no source.</summary>
    [Range(0.0, 0.2)]
    public double TapeRelativeSe { get; init; } = 0.01;

    /// <summary>Span over which the rider's size in the picture may change, s: the running median's window.</summary>
    [Range(0.5, 20.0)]
    public double SizeWindowSeconds { get; init; } = 2.0;

    /// <summary>How much nearer to the camera than the near hip joint the knee and foot stand, percent of leg length: the tangent of <see cref="ThighAbductionDeg"/> times half a leg. On rendered riders 25.</summary>
    [Range(0.0, 60.0)]
    public double KneeNearerPctLeg { get; init; } = 24;

    /// <summary>The same of shoulder and elbow: half a shoulder breadth (18 cm) less half the hip joints' distance (9 cm), from memory; on rendered riders 8.</summary>
    [Range(-60.0, 60.0)]
    public double ShoulderNearerPctLeg { get; init; } = 8;

    /// <summary>The same of ear, nose and hands, which lie near the middle of the body: minus half the hip joints' distance and a little more for the ear; on rendered riders -3.</summary>
    [Range(-60.0, 60.0)]
    public double HeadNearerPctLeg { get; init; } = -3;
}
