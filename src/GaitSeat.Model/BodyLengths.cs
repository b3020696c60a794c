namespace GaitSeat.Model;

/// <summary>What the session sheet says of the rider's size. All may be missing: then there are no centimetres.</summary>
/// <param name="StatureCm">Bare height, cm.</param>
/// <param name="ThighCm">Hip joint (greater trochanter) to knee joint, cm.</param>
/// <param name="LowerLegCm">Knee joint to ankle joint, cm.</param>
public sealed record BodyLengths(double? StatureCm = null, double? ThighCm = null, double? LowerLegCm = null)
{
    public static BodyLengths Unknown { get; } = new();

    public bool IsUnknown => StatureCm is null && ThighCm is null && LowerLegCm is null;
}
