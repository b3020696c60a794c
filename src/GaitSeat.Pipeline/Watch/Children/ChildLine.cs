using GaitSeat.Model;
using GaitSeat.Pipeline.Season;

namespace GaitSeat.Pipeline.Watch.Children;

/// <summary>The one line that a clip's process reads. The sheet's row comes from the worker, who keeps the last good sheet while somebody edits it.</summary>
internal sealed record ChildRequest(KeyedClip Clip, Session? Session);

/// <summary>A line that a clip's process writes: exactly one of the three.</summary>
internal sealed record ChildLine(int? Frames = null, ClipReport? Report = null, ChildFault? Fault = null);

internal sealed record ChildFault(ChildFaultKind Kind, string Message);

internal enum ChildFaultKind
{
    /// <summary>Something could not be read or written; the worker finds out whether the storage is gone.</summary>
    InputOutput,

    /// <summary>Another worker has the clip in hand.</summary>
    Elsewhere,

    /// <summary>A tool was ended from outside, as for want of memory.</summary>
    ToolKilled,
}
