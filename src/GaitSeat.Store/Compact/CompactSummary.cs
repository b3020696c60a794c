namespace GaitSeat.Store;

/// <summary>What compacting did.</summary>
/// <param name="Written">Parts written.</param>
/// <param name="Kept">Parts that held already and were left untouched.</param>
/// <param name="Rows">Rows of all parts, by table.</param>
/// <param name="SourceFiles">Files of clips, sessions and verdicts that the parts hold.</param>
/// <param name="SourceBytes">Their size.</param>
/// <param name="Bytes">Size of the parts.</param>
/// <param name="Problems">Parts that could not be written, and why; their rows are still read from the clips' files.</param>
public sealed record CompactSummary(
    int Written, int Kept, IReadOnlyDictionary<string, long> Rows, int SourceFiles, long SourceBytes, long Bytes, IReadOnlyList<string> Problems);
