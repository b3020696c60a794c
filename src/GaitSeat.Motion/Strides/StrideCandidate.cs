namespace GaitSeat.Motion.Strides;

/// <summary>A stride between two sits, and why it is dropped if it is.</summary>
/// <param name="DropReason">Null where it is kept.</param>
internal sealed record StrideCandidate(Sit Start, double TopSeconds, Sit End, string? DropReason)
{
    public double Seconds => End.Seconds - Start.Seconds;
}
