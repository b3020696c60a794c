using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>
/// Everything that fixes one made clip. Two equal scripts give the same frames, byte for byte.
/// Angles, signs and measures are those of the vocabulary; published values for strides and bounce stand at the properties.
/// </summary>
public sealed record ClipScript
{
    /// <summary>Seeds the stride-to-stride variation, the unsteady hand of the camera, the surroundings and the sensor noise.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Walk, rising trot, sitting trot, canter or halt; not unknown.</summary>
    public Gait Gait { get; init; } = Gait.RisingTrot;

    /// <summary>Left or right of the picture; not unknown.</summary>
    public Facing Facing { get; init; } = Facing.Right;

    /// <summary>Frames per second, 5 to 240.</summary>
    public double FrameRateHz { get; init; } = 30;

    /// <summary>Length of the clip, s, 0.2 to 600.</summary>
    public double DurationSeconds { get; init; } = 4.5;

    public int WidthPx { get; init; } = 1280;

    public int HeightPx { get; init; } = 720;

    /// <summary>Helmet top to the lowest point of the boot in the middle of the clip, px.</summary>
    public double RiderHeightPx { get; init; } = 270;

    /// <summary>Bare height of the rider, cm.</summary>
    public double StatureCm { get; init; } = 168;

    /// <summary>Hip joint to knee joint over stature. Sources: 0.212 to 0.245 by landmark and sample (de Leva 1996; ANSUR II; Drillis and Contini 1966); default between ANSUR II and Drillis and Contini.</summary>
    public double ThighOverStature { get; init; } = 0.238;

    /// <summary>Knee joint to ankle joint over stature. Sources: 0.238 to 0.249 (ANSUR II, de Leva 1996, Drillis and Contini 1966).</summary>
    public double ShankOverStature { get; init; } = 0.245;

    /// <summary>Strides per second; null takes the gait's usual one, see <see cref="GaitDefaults"/>.</summary>
    public double? StrideHz { get; init; }

    /// <summary>Rise height of a rising trot, cm; other gaits do not use it.</summary>
    public double RiseCm { get; init; } = 9;

    /// <summary>Thigh angle at the sit, deg. The leather is cut to the length that gives it.</summary>
    public double ThighSitDeg { get; init; } = 45;

    /// <summary>Trunk lean at the sit, deg, + forward.</summary>
    public double TrunkLeanDeg { get; init; } = 8;

    /// <summary>Foot pitch at the sit, deg, + toe above heel.</summary>
    public double FootPitchDeg { get; init; } = 7;

    /// <summary>How far the tread swings forward and back in a stride, cm, peak to peak.</summary>
    public double DriftSwingCm { get; init; } = 1.5;

    /// <summary>
    /// Mean forward position of the tread from where it would hang under the stirrup bar, cm, + forward.
    /// Not the stirrup drift offset of the vocabulary (tread minus hip at the sit), which follows from it and stands in the truth.
    /// </summary>
    public double DriftOffsetCm { get; init; }

    /// <summary>Where in the stride (0..1 from the sit) the tread is furthest forward.</summary>
    public double DriftPhase { get; init; } = 0.35;

    /// <summary>Vertical motion of the horse's trunk, cm, peak to peak; null takes the gait's usual one.</summary>
    public double? BounceCm { get; init; }

    public CameraWork Camera { get; init; } = CameraWork.Pan;

    /// <summary>Distance of the camera from the horse in the middle of the clip, m.</summary>
    public double CameraDistanceM { get; init; } = 11;

    /// <summary>Change of the focal length over the clip, as a share: 0.1 ends 10 % longer than it began.</summary>
    public double ZoomChange { get; init; }

    /// <summary>Turn of the rider out of the picture plane in the middle of the clip, deg; the sign says to which side.</summary>
    public double YawDeg { get; init; }

    /// <summary>Stride-to-stride variation of duration, percent (coefficient of variation). About 2 in trotters: Drevemo 1980.</summary>
    public double DurationCvPct { get; init; } = 1.5;

    /// <summary>Stride-to-stride variation of the rise height, percent.</summary>
    public double RiseCvPct { get; init; } = 4;

    /// <summary>Sensor noise, standard deviation in 8-bit steps.</summary>
    public double NoiseSd { get; init; } = 2;

    public Look Look { get; init; } = new();

    /// <summary><see cref="StrideHz"/> or the gait's usual one.</summary>
    public double StrideHzOrUsual => StrideHz ?? GaitDefaults.StrideHz(Gait);

    /// <summary><see cref="BounceCm"/> or the gait's usual one.</summary>
    public double BounceCmOrUsual => BounceCm ?? GaitDefaults.BounceCm(Gait);

    /// <summary>Number of frames: duration times rate, rounded.</summary>
    public int FrameCount => (int)Math.Round(DurationSeconds * FrameRateHz);
}
