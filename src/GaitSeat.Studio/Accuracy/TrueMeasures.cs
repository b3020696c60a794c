using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>What a true stride says of a measure; null where the truth does not carry it.</summary>
public static class TrueMeasures
{
    /// <summary>The measures that truth files can speak of, in the order they are reported.</summary>
    public static IReadOnlyList<StrideMeasure> Known { get; } =
    [
        StrideMeasure.StrideDuration,
        StrideMeasure.RiseHeightCm,
        StrideMeasure.OverStirrupRiseCm,
        StrideMeasure.ThighAngleSit,
        StrideMeasure.ThighAngleTop,
        StrideMeasure.ShankAngleSit,
        StrideMeasure.KneeAngleSit,
        StrideMeasure.TrunkLeanSit,
        StrideMeasure.TrunkLeanTop,
        StrideMeasure.FootPitchSit,
        StrideMeasure.StirrupDriftSwingCm,
        StrideMeasure.StirrupDriftOffsetCm,
        StrideMeasure.StirrupLengthIndex,
        StrideMeasure.Scale,
    ];

    public static double? Of(ClipTruth clip, StrideTruth stride, StrideMeasure measure, double analysisPxPerClipPx) => measure switch
    {
        StrideMeasure.StrideDuration => stride.DurationS,
        StrideMeasure.RiseHeightCm or StrideMeasure.OverStirrupRiseCm => stride.RiseCm,
        StrideMeasure.ThighAngleSit => stride.ThighSitDeg,
        StrideMeasure.ThighAngleTop => stride.ThighTopDeg,
        StrideMeasure.ShankAngleSit => stride.ShankSitDeg,
        StrideMeasure.KneeAngleSit => stride.KneeSitDeg,
        StrideMeasure.TrunkLeanSit => stride.TrunkSitDeg,
        StrideMeasure.TrunkLeanTop => stride.TrunkTopDeg,
        StrideMeasure.FootPitchSit => stride.FootPitchSitDeg,
        StrideMeasure.StirrupDriftSwingCm => stride.DriftSwingCm,
        StrideMeasure.StirrupDriftOffsetCm => stride.DriftOffsetHipCm ?? OffsetFromFrames(clip, stride),
        StrideMeasure.StirrupLengthIndex => stride.StirrupLengthIndexPct,
        StrideMeasure.Scale => ScaleOver(clip, stride, analysisPxPerClipPx),
        _ => null,
    };

    /// <summary>Tread minus hip, forward, from the frame nearest the sit, cm.</summary>
    private static double? OffsetFromFrames(ClipTruth clip, StrideTruth stride)
    {
        if (clip.FrameRows.MinBy(f => Math.Abs(f.TimeSeconds - stride.SitS)) is not { } frame) return null;
        return frame["tread"].Metres is { } tread && frame["hip"].Metres is { } hip ? 100 * (tread.Forward - hip.Forward) : null;
    }

    private static double? ScaleOver(ClipTruth clip, StrideTruth stride, double analysisPxPerClipPx)
    {
        var inside = clip.FrameRows.Where(f => f.TimeSeconds >= stride.SitS && f.TimeSeconds <= stride.NextSitS).ToArray();
        return inside.Length == 0 ? null : 100 / (inside.Average(f => f.PxPerM) * analysisPxPerClipPx);
    }
}
