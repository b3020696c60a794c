using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Vision.Sight;

/// <summary>Reading body points from frames and fusing what two models say.</summary>
public sealed record BodyPointSettings
{
    /// <summary>Side of the first model's square crop over the rider box's longer side. 1.0 to 1.25 works on riders (18 frames marked by hand).</summary>
    [Range(0.8, 3.0)]
    public double BoxCropFactor { get; init; } = 1.2;

    /// <summary>Side of the second model's square crop over the length hip to shoulder. 4.0 was best on frames marked by hand.</summary>
    [Range(2.0, 8.0)]
    public double TorsoCropFactor { get; init; } = 4.0;

    /// <summary>Peak of a landmark's heat map from which the landmark is moved to the map's centroid, 0..1. 0.5 is the model's own published graph setting.</summary>
    [Range(0.0, 1.0)]
    public double RefinePeakMinimum { get; init; } = 0.5;

    /// <summary>Share of the first model (MoveNet) in the hip, 0..1; the second (BlazePose) has the rest.</summary>
    [Range(0.0, 1.0)]
    public double FirstShareHip { get; init; } = 0.7;

    /// <summary>Share of the first model in the knee, 0..1.</summary>
    [Range(0.0, 1.0)]
    public double FirstShareKnee { get; init; } = 0.8;

    /// <summary>Share of the first model in the ankle, 0..1: its median error is the smaller once swaps are undone (2.2 against 2.5 % of rider height).</summary>
    [Range(0.0, 1.0)]
    public double FirstShareAnkle { get; init; } = 0.5;

    /// <summary>Share of the first model in nose, ear, shoulder, elbow and wrist, 0..1.</summary>
    [Range(0.0, 1.0)]
    public double FirstShareUpper { get; init; } = 0.5;

    /// <summary>Disagreement of the models from which a point is no longer trusted, share of rider box height. Ordinary disagreement is 2 to 5 %.</summary>
    [Range(0.01, 1.0)]
    public double DisagreementMaximum { get; init; } = 0.10;

    /// <summary>Least height of the rider's box to be measured, px. Below about 40 the models are unusable; at 60 to 70 no loss was seen.</summary>
    [Range(10.0, 2000.0)]
    public double RiderHeightMinimumPx { get; init; } = 50;

    /// <summary>Least confidence of shoulder, hip, knee and ankle, 0..1.</summary>
    [Range(0.0, 1.0)]
    public double ConfidenceMinimum { get; init; } = 0.15;

    /// <summary>Largest turn of the rider out of the picture plane, deg: at 20 deg a 45 deg thigh reads 1.8 deg low (geometry).</summary>
    [Range(1.0, 90.0)]
    public double ViewYawMaximumDeg { get; init; } = 20;

    /// <summary>Window over which facing is voted and view yaw smoothed, s.</summary>
    [Range(0.1, 30.0)]
    public double VoteWindowSeconds { get; init; } = 2.0;
}
