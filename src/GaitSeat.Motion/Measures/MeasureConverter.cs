using GaitSeat.Model;
using GaitSeat.Motion.Scale;

namespace GaitSeat.Motion.Measures;

/// <summary>From legs to centimetres and percent of leg length, with what the scale and the models' gain add to the standard error.</summary>
internal sealed class MeasureConverter(LegScale scale, MotionSettings settings)
{
    private const double Percent = 100;

    /// <summary>Each length in cm, its twin in percent of leg length, and whether it is the size of a movement.</summary>
    private static readonly (StrideMeasure Cm, StrideMeasure Pct, bool Movement)[] Lengths =
    [
        (StrideMeasure.RiseHeightCm, StrideMeasure.RiseHeightPctLeg, true),
        (StrideMeasure.OverStirrupRiseCm, StrideMeasure.OverStirrupRisePctLeg, true),
        (StrideMeasure.StirrupDriftSwingCm, StrideMeasure.StirrupDriftSwingPctLeg, true),
        (StrideMeasure.StirrupDriftOffsetCm, StrideMeasure.StirrupDriftOffsetPctLeg, false),
        (StrideMeasure.EarOffsetCm, StrideMeasure.EarOffsetPctLeg, false),
        (StrideMeasure.ShoulderOffsetCm, StrideMeasure.ShoulderOffsetPctLeg, false),
        (StrideMeasure.HeelOffsetCm, StrideMeasure.HeelOffsetPctLeg, false),
        (StrideMeasure.HandTravelCm, StrideMeasure.HandTravelPctLeg, true),
    ];

    private static readonly StrideMeasure[] OverTheFoot =
        [StrideMeasure.OverStirrupRiseCm, StrideMeasure.StirrupDriftSwingCm, StrideMeasure.StirrupDriftOffsetCm, StrideMeasure.StirrupLengthIndex, StrideMeasure.HeelOffsetCm];

    private static readonly StrideMeasure[] AsTheyAre =
    [
        StrideMeasure.StrideDuration, StrideMeasure.ThighAngleSit, StrideMeasure.ThighAngleTop, StrideMeasure.ShankAngleSit,
        StrideMeasure.KneeAngleSit, StrideMeasure.KneeAngleTop, StrideMeasure.TrunkLeanSit, StrideMeasure.TrunkLeanTop,
        StrideMeasure.FootPitchSit,
    ];

    /// <param name="legPx">Size of the leg in the picture: what the models cannot resolve is a length in pixels.</param>
    public MeasureSet Convert(double[] values, double[] errors, double legPx)
    {
        var set = new MeasureSet();
        void Put(StrideMeasure to, StrideMeasure from, double factor, double relativeSe)
        {
            double value = values[(int)from] * factor, error = errors[(int)from] * factor;
            if (double.IsFinite(value)) set[to] = new(value, Math.Sqrt(error * error + value * relativeSe * value * relativeSe));
        }

        AddFootError(values, errors);
        AddDisagreement(values, errors);
        AddPixelError(errors, legPx);
        var gain = settings.Uncertainty.GainRelativeSe;
        var leg = settings.Uncertainty.LegLengthRelativeSe;
        foreach (var measure in AsTheyAre) Put(measure, measure, 1, 0);
        foreach (var (cm, pct, movement) in Lengths)
        {
            Put(pct, cm, Percent, Both(leg, movement ? gain : 0));
            if (!scale.IsUnknown) Put(cm, cm, scale.CmPerLeg, Both(scale.RelativeSe, movement ? gain : 0));
            else set[cm] = Measured.Missing;
        }

        Put(StrideMeasure.TimeAloft, StrideMeasure.TimeAloft, Percent, 0);
        Put(StrideMeasure.StirrupLengthIndex, StrideMeasure.StirrupLengthIndex, Percent, leg);
        Put(StrideMeasure.LeatherSwing, StrideMeasure.LeatherSwing, 1, gain);
        if (!scale.IsUnknown) Put(StrideMeasure.SitImpact, StrideMeasure.SitImpact, scale.CmPerLeg, Both(scale.RelativeSe, gain));
        return set;
    }

    /// <summary>A foot that tips with the stride moves the tread's point without the leather swinging: no averaging takes that out.</summary>
    private void AddFootError(double[] values, double[] errors)
    {
        const int swing = (int)StrideMeasure.StirrupDriftSwingCm, leather = (int)StrideMeasure.LeatherSwing;
        var foot = settings.Uncertainty.FootSwingSePctLeg / Percent;
        errors[swing] = Both(errors[swing], foot);

        // d(2 atan(s / 2L)) = ds / L / (1 + (s / 2L)^2), with s / 2L = tan(angle / 2).
        var tangent = Math.Tan(double.DegreesToRadians(values[leather]) / 2);
        var length = values[(int)StrideMeasure.StirrupLengthIndex] - settings.Stride.HipToBarPctLeg / Percent;
        errors[leather] = Both(errors[leather], double.RadiansToDegrees(foot / length / (1 + tangent * tangent)));
    }

    /// <summary>Rise over the trunk and rise over the stirrup are one motion: what they differ by is the error of the one or the other, of a foot that was lost mostly.</summary>
    private void AddDisagreement(double[] values, double[] errors)
    {
        const int rise = (int)StrideMeasure.RiseHeightCm, over = (int)StrideMeasure.OverStirrupRiseCm;
        var apart = Math.Abs(values[rise] - values[over]);
        if (!double.IsFinite(apart)) return;
        errors[rise] = Both(errors[rise], settings.Uncertainty.DisagreementOfRise * apart);
        var foot = settings.Uncertainty.DisagreementOfFoot * apart;
        foreach (var measure in OverTheFoot) errors[(int)measure] = Both(errors[(int)measure], foot);
    }

    private void AddPixelError(double[] errors, double legPx)
    {
        var legs = settings.Uncertainty.PixelSe / legPx;
        foreach (var (measure, _, movement) in Lengths)
            if (movement) errors[(int)measure] = Both(errors[(int)measure], legs);
    }

    private static double Both(double a, double b) => Math.Sqrt(a * a + b * b);
}
