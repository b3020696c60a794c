namespace GaitSeat.Studio;

/// <summary>A made clip: where it stands and what is truly in it.</summary>
/// <param name="ClipPath">The video file.</param>
/// <param name="TruthPath">The truth beside it (JSON; the per-frame CSV has the same stem).</param>
public sealed record StudioClip(string ClipPath, string TruthPath, ClipTruth Truth);
