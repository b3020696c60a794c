using GaitSeat.Model;

namespace GaitSeat.Motion.Sessions;

/// <summary>A stride of a session: one rider on one horse on one day.</summary>
/// <param name="Clip">0-based number of the clip, in the order they were filmed.</param>
/// <param name="Rein"><c>left</c>, <c>right</c> or null where the sheet does not say.</param>
public sealed record SessionStride(int Clip, string? Rein, Stride Stride);

/// <summary>A change of stirrup length within a session.</summary>
/// <param name="ClipBefore">Clip of the last stride before it.</param>
/// <param name="ClipAfter">Clip of the first stride after it; the same one for a change within a clip.</param>
/// <param name="Rein">The rein all strides compared were ridden on; null where the sheet does not say.</param>
/// <param name="ClipsBefore">Clips the strides before come from.</param>
/// <param name="ClipsAfter">Clips the strides after come from.</param>
public sealed record SessionShift(StirrupShift Shift, int ClipBefore, int ClipAfter, string? Rein, int ClipsBefore, int ClipsAfter);
