namespace GaitSeat.Motion.Strides;

/// <summary>A stride between two sits, and why it is dropped if it is.</summary>
/// <param name="Rise">Height of the top over the line between the sits, in leg lengths; NaN where it was not read.</param>
/// <param name="DropReason">Null where it is kept.</param>
internal sealed record StrideCandidate(Sit Start, double TopSeconds, Sit End, double Rise, string? DropReason)
{
    public double Seconds => End.Seconds - Start.Seconds;
}
