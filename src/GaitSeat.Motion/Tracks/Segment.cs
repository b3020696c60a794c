using GaitSeat.Model;

namespace GaitSeat.Motion.Tracks;

/// <summary>A continuous stretch of a clip: one facing, no cut, no hole longer than may be bridged.</summary>
/// <param name="First">Index of its first frame.</param>
/// <param name="EndExcl">Index after its last frame.</param>
/// <param name="StartsAtGap">Whether earlier frames of the clip were left out or cut off just before it.</param>
/// <param name="EndsAtGap">The same after it.</param>
internal sealed record Segment(int First, int EndExcl, Facing Facing, bool StartsAtGap, bool EndsAtGap)
{
    public int Count => EndExcl - First;

    /// <summary>+1 where travel is to the right of the picture, -1 to the left.</summary>
    public int Sign => Facing == Facing.Left ? -1 : 1;
}
