using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures;

/// <summary>What is known about one frame, in the pixels of that frame.</summary>
/// <param name="TimeSeconds">Time of the frame, s.</param>
/// <param name="Trace">The clip's smoothed signals; its points in pixels of the frame painted.</param>
/// <param name="TraceIndex">The frame's place in the trace; -1 where the trace has none.</param>
/// <param name="Strides">All strides of the clip, in time order.</param>
/// <param name="Spells">All spells of the clip.</param>
/// <param name="Facing">Travel direction in this frame.</param>
/// <param name="Rider">The rider's box; null where not seen.</param>
/// <param name="Others">Boxes of other people in the frame, whose heads are blurred too.</param>
public sealed record OverlayScene(
    double TimeSeconds,
    MotionTrace Trace,
    int TraceIndex,
    IReadOnlyList<Stride> Strides,
    IReadOnlyList<Spell> Spells,
    Facing Facing,
    BoxPx? Rider,
    IReadOnlyList<BoxPx>? Others = null);
