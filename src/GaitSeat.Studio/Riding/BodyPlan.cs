namespace GaitSeat.Studio;

/// <summary>
/// Lengths of the rider and where the joints lie across the horse, m. Segment fractions of stature: Drillis and Contini 1966 as in Winter 2009
/// (shoulder height 0.818, hip 0.530, upper arm 0.186, forearm 0.146, foot 0.152, ankle height 0.039; from memory) except thigh and shank, which the script gives.
/// Across the horse: femoral heads 18.3 cm apart (250 women, X-ray); knee and ankle lie on a barrel about half a metre wide (no source).
/// </summary>
internal sealed class BodyPlan
{
    /// <summary>Hip joint over the saddle's seat at the sit: soft tissue and half the pelvis, no source.</summary>
    public const double HipOverSeatM = 0.09;

    /// <summary>The bar lies forward of the seat's lowest point and below it; so the heel of a foot at rest is under the hip.</summary>
    public const double BarForwardM = 0.115;

    public const double BarBelowSeatM = 0.155;

    public const double HipNearM = 0.0915;
    public const double KneeNearM = 0.26;
    public const double AnkleNearM = 0.295;
    public const double TreadNearM = 0.305;
    public const double BarNearM = 0.22;
    public const double ElbowNearM = 0.20;
    public const double WristNearM = 0.11;
    public const double EarNearM = 0.075;

    private const double SoleM = 0.02;

    public BodyPlan(ClipScript script)
    {
        StatureM = script.StatureCm / 100;
        ThighM = script.ThighOverStature * StatureM;
        ShankM = script.ShankOverStature * StatureM;
        TrunkM = (0.818 - 0.530) * StatureM;
        UpperArmM = 0.186 * StatureM;
        ForearmM = 0.146 * StatureM;
        var footM = 0.152 * StatureM;
        // Tragus at 0.93 of stature (no source); the ear hangs a little forward of the shoulder.
        Ear = (0.025, (0.93 - 0.818) * StatureM);
        // Crown over the tragus 0.07 of stature, and 3 cm of helmet.
        HelmetTop = (0.012, 0.07 * StatureM + 0.03);
        AnkleOverSoleM = 0.039 * StatureM + SoleM;
        // The ball lies at 0.73 of a bare foot from the heel (from memory); the iron a little behind it, in a boot that is longer than the foot.
        BallForwardM = 0.36 * footM;
        ToeForwardM = 0.70 * footM;
        HeelBackM = 0.25 * footM;
        ShoulderNearM = 0.105 * StatureM;
        ThighInPlaneM = InPlane(ThighM, KneeNearM - HipNearM);
        ShankInPlaneM = InPlane(ShankM, AnkleNearM - KneeNearM);
        UpperArmInPlaneM = InPlane(UpperArmM, ElbowNearM - ShoulderNearM);
        ForearmInPlaneM = InPlane(ForearmM, ElbowNearM - WristNearM);
    }

    public double StatureM { get; }

    /// <summary>True length hip joint to knee joint; the knee lies further out than the hip, so less of it shows from the side.</summary>
    public double ThighM { get; }

    public double ShankM { get; }

    public double TrunkM { get; }

    public double UpperArmM { get; }

    public double ForearmM { get; }

    /// <summary>From the shoulder, head upright: forward, up.</summary>
    public (double Forward, double Up) Ear { get; }

    /// <summary>From the ear.</summary>
    public (double Forward, double Up) HelmetTop { get; }

    public double AnkleOverSoleM { get; }

    public double BallForwardM { get; }

    public double ToeForwardM { get; }

    public double HeelBackM { get; }

    public double ShoulderNearM { get; }

    public double ThighInPlaneM { get; }

    public double ShankInPlaneM { get; }

    public double UpperArmInPlaneM { get; }

    public double ForearmInPlaneM { get; }

    private static double InPlane(double length, double across) =>
        length > Math.Abs(across)
            ? Math.Sqrt(length * length - across * across)
            : throw new ArgumentException($"A limb of {length:F2} m cannot reach {Math.Abs(across):F2} m across the horse: stature and segment fractions are too small.");
}
