using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>All that is written of one clip under one pipeline hash and one model hash.</summary>
/// <param name="Session">The clip's row of the session sheet; null where the sheet has none.</param>
/// <param name="Info">What probing told; null where it told nothing.</param>
/// <param name="Reason">Snake_case word of a clip set aside; null for a measured one.</param>
/// <param name="Detail">A sentence for people: what was found, what is allowed; null for a measured clip.</param>
/// <param name="Motion">What the maths made of it; null where it never came to that.</param>
/// <param name="LeftOut">
/// Everything left out by any stage, those of <see cref="ClipMotion.LeftOut"/> included: only this list is written.
/// The clip row of a clip set aside is added from <paramref name="Reason"/> where the list has none.
/// </param>
/// <param name="FramesAnalysed">Frames looked at, good or not.</param>
public sealed record ClipRecord(
    Provenance Provenance,
    Session? Session,
    ClipInfo? Info,
    ClipStatus Status,
    string? Reason,
    string? Detail,
    Sightings? Sightings,
    ClipMotion? Motion,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<LeftOut> LeftOut,
    int FramesAnalysed);
