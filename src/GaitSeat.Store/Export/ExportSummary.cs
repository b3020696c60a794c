namespace GaitSeat.Store;

/// <summary>What an export wrote and what it left out.</summary>
/// <param name="Files">Full paths.</param>
/// <param name="Rows">Rows, frames or cues in them.</param>
/// <param name="LeftOut">How many, by reason.</param>
public sealed record ExportSummary(IReadOnlyList<string> Files, long Rows, IReadOnlyDictionary<string, int> LeftOut);
