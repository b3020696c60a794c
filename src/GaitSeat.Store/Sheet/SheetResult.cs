using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>What reading a session sheet gave.</summary>
/// <param name="Sessions">The rows without error, by clip file name; the case of letters does not matter.</param>
/// <param name="Errors">All errors of the sheet; a run should not start while there is one.</param>
/// <param name="Warnings">What looks odd but is allowed.</param>
public sealed record SheetResult(
    IReadOnlyDictionary<string, Session> Sessions,
    IReadOnlyList<SheetProblem> Errors,
    IReadOnlyList<SheetProblem> Warnings);
