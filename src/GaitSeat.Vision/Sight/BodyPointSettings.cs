using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Vision.Sight;

/// <summary>Reading body points from frames and fusing what two models say.</summary>
public sealed record BodyPointSettings
{
    /// <summary>
    /// Path of an ONNX file that takes the first model's place, from the folder the program is started in; null for the built-in model. Allowed: one
    /// float input [N,H,W,3] or [N,3,H,W] of fixed size (RGB, ImageNet mean and deviation) and a float output [N,17,h,w] of heat maps in COCO order, N free or 1.
    /// </summary>
    public string? UserModel { get; init; }

    /// <summary>Side of the first model's square crop over the rider box's longer side. 1.0 to 1.25 works on riders (18 frames marked by hand).</summary>
    [Range(0.8, 3.0)]
    public double BoxCropFactor { get; init; } = 1.2;

    /// <summary>Side of the second model's square crop over the length hip to shoulder. 4.0 was best on frames marked by hand.</summary>
    [Range(2.0, 8.0)]
    public double TorsoCropFactor { get; init; } = 4.0;

    /// <summary>
    /// Least time from one reading of the second model to its next, s; between them its points follow the first model's. With 0.025 it reads every frame at 30 frames
    /// a second and every other one at 50 or 60, which measures as well as every frame does; at 15 readings a second strides are lost (docs/decisions/0015-what-speed-may-cost.md).
    /// </summary>
    [Range(0.0, 0.1)]
    public double SecondStepSeconds { get; init; } = 0.025;

    /// <summary>Peak of a landmark's heat map from which the landmark is moved to the map's centroid, 0..1. 0.5 is the model's own published graph setting.</summary>
    [Range(0.0, 1.0)]
    public double RefinePeakMinimum { get; init; } = 0.5;

    /// <summary>
    /// Hip: place from the first model (its thigh angle is 0 to 4 deg off on five rendered clips, the second's 3 to 12), motion mostly from the second
    /// (frame-to-frame noise 0.3 to 0.6 cm against 0.6 to 1.2).
    /// </summary>
    public PointShare Hip { get; init; } = new(1.0, 0.3);

    /// <summary>Knee: as the hip.</summary>
    public PointShare Knee { get; init; } = new(1.0, 0.3);

    /// <summary>Ankle: mostly from the second model (noise 0.5 cm, correlation 0.98 with the truth); the first takes the far or the horse's leg for it now and then.</summary>
    public PointShare Ankle { get; init; } = new(0.3, 0.1);

    /// <summary>Nose, ear, shoulder, elbow and wrist: both models alike.</summary>
    public PointShare Upper { get; init; } = new(0.5, 0.4);

    /// <summary>How far the trunk is held to its usual length, 0 (not) to 1 (rigid). A living trunk gives a little: 0.8 leaves it a fifth.</summary>
    [Range(0.0, 1.0)]
    public double TrunkStiffness { get; init; } = 0.8;

    /// <summary>How far heel and toe are held to their usual place about the ankle, 0 (not) to 1 (rigid): 0.8 leaves a fifth of the foot's own turning within a stride.</summary>
    [Range(0.0, 1.0)]
    public double FootStiffness { get; init; } = 0.8;

    /// <summary>Disagreement of the models from which a point is no longer trusted, share of rider box height. Ordinary disagreement is 2 to 5 %.</summary>
    [Range(0.01, 1.0)]
    public double DisagreementMaximum { get; init; } = 0.10;

    /// <summary>Least height of the rider's box to be measured, px. Below about 40 the models are unusable; at 60 to 70 no loss was seen.</summary>
    [Range(10.0, 2000.0)]
    public double RiderHeightMinimumPx { get; init; } = 50;

    /// <summary>Least confidence of shoulder, hip, knee and ankle, 0..1.</summary>
    [Range(0.0, 1.0)]
    public double ConfidenceMinimum { get; init; } = 0.15;

    /// <summary>Window over which facing is voted, view yaw smoothed and usual offsets and lengths taken, s: at least two strides.</summary>
    [Range(0.1, 30.0)]
    public double VoteWindowSeconds { get; init; } = 2.0;

    /// <summary>How near the picture's left or right edge a rider may be cut off by it, rider heights: about half a rider's length with arms and foot, and what the models push inwards.</summary>
    [Range(0, 2)]
    public double EdgeZoneHeights { get; init; } = 0.4;

    /// <summary>Confidence each needed point must have in that zone, 0..1. Riders half out of made and rendered pictures had 0.3 to 0.7, whole ones 0.9 and more.</summary>
    [Range(0, 1)]
    public double EdgeConfidenceMinimum { get; init; } = 0.8;

    /// <summary>
    /// Whether every other frame is read as a mirror shows it, so that a model's habit of placing points differently on riders who face left and right
    /// averages out. Measured on made clips: see docs/decisions/0003-every-other-frame-mirrored.md.
    /// </summary>
    public bool MirrorEveryOther { get; init; } = true;
}
