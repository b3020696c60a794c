namespace GaitSeat.Pipeline.Watch.Children;

/// <summary>A line that a clip's process writes: exactly one of the three.</summary>
internal sealed record ChildLine(int? Frames = null, ClipReport? Report = null, ChildFault? Fault = null);

internal sealed record ChildFault(ChildFaultKind Kind, string Message);

internal enum ChildFaultKind
{
    /// <summary>Something could not be read or written; the worker finds out whether the storage is gone.</summary>
    InputOutput,

    /// <summary>Another worker has the clip in hand.</summary>
    Elsewhere,
}
