using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>Where the scout thinks things are in this frame, analysis pixels; null where it does not know.</summary>
/// <param name="Rider">The rider's box. Without it no trunk is fitted.</param>
/// <param name="Horse">The horse's box; guessed from the rider's box where missing.</param>
/// <param name="Seat">Where the saddle is thought to be; taken from the rider's box where missing.</param>
public sealed record FlowHints(BoxPx? Rider, BoxPx? Horse, PointPx? Seat)
{
    public static FlowHints None { get; } = new(null, null, null);
}
