using GaitSeat.Footage;
using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>
/// Everything that fixes one made clip. Two equal scripts give the same frames, byte for byte.
/// Angles, signs and measures are those of the vocabulary; published values for strides and bounce stand at the properties.
/// </summary>
public sealed record ClipScript
{
    /// <summary>Withers of the horse whose parts are drawn, cm.</summary>
    internal const double DrawnHorseCm = 165;

    /// <summary>Seeds the stride-to-stride variation, the unsteady hand of the camera, the surroundings and the sensor noise.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Walk, rising trot, sitting trot, canter or halt; not unknown.</summary>
    public Gait Gait { get; init; } = Gait.RisingTrot;

    /// <summary>Other gaits later in the clip, in order of time; none keeps <see cref="Gait"/> to the end.</summary>
    public IReadOnlyList<GaitChange> GaitChanges { get; init; } = [];

    /// <summary>Left or right of the picture; not unknown. On a circle seen from outside: where the horse is nearest.</summary>
    public Facing Facing { get; init; } = Facing.Right;

    /// <summary>Frames per second, 5 to 240.</summary>
    public double FrameRateHz { get; init; } = 30;

    /// <summary>Whether the frames come at uneven times, as phones write them: some late, some left out. <see cref="FrameRateHz"/> is then the rate without losses.</summary>
    public bool VariableRate { get; init; }

    /// <summary>Length of the clip, s, 0.2 to 600.</summary>
    public double DurationSeconds { get; init; } = 4.5;

    public int WidthPx { get; init; } = 1280;

    public int HeightPx { get; init; } = 720;

    /// <summary>Helmet top to the lowest point of the boot in the middle of the clip, px.</summary>
    public double RiderHeightPx { get; init; } = 270;

    /// <summary>Height of the horse at the withers, cm: a pony has up to 148, a large horse 175 and more (FEI's limit for ponies, from memory).</summary>
    public double HorseHeightCm { get; init; } = DrawnHorseCm;

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

    /// <summary>Leathers made shorter or longer within the clip.</summary>
    public StirrupChange? StirrupChange { get; init; }

    /// <summary>When the rider sits two beats running, s: at the sit instant nearest to it; null for never. The diagonal changes by it.</summary>
    public double? DoubleBounceAtSeconds { get; init; }

    /// <summary>Whether the rider sits as the other pair of legs lands: a change of diagonal that was missed.</summary>
    public bool OtherDiagonal { get; init; }

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

    public Way Way { get; init; } = Way.Usual;

    /// <summary>Diameter of the circle, m, for a way that is one.</summary>
    public double CircleDiameterM { get; init; } = 20;

    /// <summary>Where on the circle the horse is in the middle of the clip, deg, forward from where it is nearest to a camera outside; not used for a camera in the middle.</summary>
    public double CircleStartDeg { get; init; }

    /// <summary>Turn of the camera about its axis, deg, + the right side of the picture is low.</summary>
    public double RollDeg { get; init; }

    /// <summary>Distance of the camera from the horse in the middle of the clip, m; from the middle of the circle for <see cref="Way.CircleFromOutside"/>; not used for <see cref="Way.CircleFromInside"/>.</summary>
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

    /// <summary>Exposure, s. 1/200 is a bright day, 1/40 a hall in winter.</summary>
    public double ShutterSeconds { get; init; } = 1 / 200.0;

    /// <summary>How light the picture is: 1 as painted, 0.3 a dark hall.</summary>
    public double Light { get; init; } = 1;

    /// <summary>Constant rate factor of the encoder; 20 is a good phone's, 34 and more falls into blocks.</summary>
    public int Crf { get; init; } = 20;

    /// <summary>x264's preset; a quicker one makes larger files of the same look.</summary>
    public EncodePreset Preset { get; init; } = EncodePreset.VeryFast;

    /// <summary>Distance between posts that stand between camera and rider, m; 0 for none.</summary>
    public double PostEveryM { get; init; }

    public Bystander Bystander { get; init; }

    public Look Look { get; init; } = new();

    /// <summary>What is to be written into the truth as the clip's conditions.</summary>
    public IReadOnlyDictionary<string, string> Conditions { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>The horse over the drawn one.</summary>
    public double HorseScale => HorseHeightCm / DrawnHorseCm;

    /// <summary><see cref="StrideHz"/> or the gait's usual one.</summary>
    public double StrideHzOrUsual => StrideHz ?? GaitDefaults.StrideHz(Gait);

    /// <summary><see cref="BounceCm"/> or the gait's usual one.</summary>
    public double BounceCmOrUsual => BounceCm ?? GaitDefaults.BounceCm(Gait);

    /// <summary>Number of frames where the rate does not vary: duration times rate, rounded.</summary>
    public int FrameCount => (int)Math.Round(DurationSeconds * FrameRateHz);

    /// <summary>Whether there is rising trot anywhere in the clip.</summary>
    internal bool Rises => Gait == Gait.RisingTrot || GaitChanges.Any(c => c.Gait == Gait.RisingTrot);

    /// <summary>Strides per second of a gait of this clip. A halt is cut into seconds where other gaits follow.</summary>
    internal double StrideHzOf(Gait gait) => gait == Gait.Halt ? 1 : IsKin(gait) ? StrideHzOrUsual : GaitDefaults.StrideHz(gait);

    internal double BounceCmOf(Gait gait) => IsKin(gait) ? BounceCmOrUsual : GaitDefaults.BounceCm(gait);

    // What a script says of its trot holds for rising and sitting.
    private bool IsKin(Gait gait) => gait == Gait || (IsTrot(gait) && IsTrot(Gait));

    private static bool IsTrot(Gait gait) => gait is Gait.RisingTrot or Gait.SittingTrot;
}
