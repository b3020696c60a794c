namespace GaitSeat.Studio;

/// <summary>
/// One stride as it truly is, sit instant to sit instant. What a file does not tell is null.
/// Cuts that are not rising trot carry the horse's stride; their rise is the small motion of the seat on the saddle.
/// </summary>
public sealed record StrideTruth
{
    /// <summary>Sit instant that begins the stride, s from the first frame.</summary>
    public required double SitS { get; init; }

    /// <summary>Highest seat position over the saddle, s.</summary>
    public required double TopS { get; init; }

    /// <summary>Sit instant that ends the stride, s.</summary>
    public required double NextSitS { get; init; }

    /// <summary>Highest seat position minus the mean of the two bounding sits, cm.</summary>
    public required double RiseCm { get; init; }

    /// <summary>Mean thigh angle over 5 % of the stride on either side of the sit, deg.</summary>
    public double? ThighSitDeg { get; init; }

    /// <summary>The same around the top, deg.</summary>
    public double? ThighTopDeg { get; init; }

    public double? ShankSitDeg { get; init; }

    public double? KneeSitDeg { get; init; }

    public double? TrunkSitDeg { get; init; }

    public double? TrunkTopDeg { get; init; }

    public double? FootPitchSitDeg { get; init; }

    /// <summary>Range of the tread's forward position in the trunk frame, cm.</summary>
    public double? DriftSwingCm { get; init; }

    /// <summary>Mean forward position of the tread from where it hangs under the bar, cm; not the offset of the vocabulary.</summary>
    public double? DriftOffsetCm { get; init; }

    /// <summary>Tread minus hip, forward, at the sit, cm: the stirrup drift offset of the vocabulary.</summary>
    public double? DriftOffsetHipCm { get; init; }

    /// <summary>Vertical hip–tread distance at the sit over thigh + shank length, percent.</summary>
    public double? StirrupLengthIndexPct { get; init; }

    /// <summary>
    /// What is out of order about this stride; null for an ordinary one. <c>double-bounce</c>: the rider sat two beats running to change the diagonal, and this is
    /// the stride that ends with that long sit (it then lasts one and a half strides of the horse) or the one that begins with it. The long sit has two lowest points
    /// of the same depth; the later one, from which the rider rises, is taken. Whoever takes the earlier is not wrong: pass over both strides when counting.
    /// </summary>
    public string? Fault { get; init; }

    public double DurationS => NextSitS - SitS;
}
