using GaitSeat.Store;

namespace GaitSeat.Pipeline.Privacy;

/// <summary>What an erasure would take away.</summary>
/// <param name="Order">Whom and which clips it means.</param>
/// <param name="LedgerFiles">Files of the clips in the tables.</param>
/// <param name="Files">Other files of the dataset that tell of the rider.</param>
/// <param name="Models">Folders of fault models that learnt from the clips, relative to the dataset.</param>
/// <param name="AuditLines">Lines of the audit log that lose the pseudonym.</param>
/// <param name="QueueRows">Rows of the shared queue; null where none was named.</param>
/// <param name="Sources">Source clips found, full paths, whether or not they are to go.</param>
/// <param name="SheetRows">Rows of session sheet and consent file that name the rider or the clips.</param>
/// <param name="HandedOut">What the audit log says went out of the house with the rider in it; it cannot be taken back from here.</param>
public sealed record ForgetPlan(
    ForgetOrder Order,
    int LedgerFiles,
    IReadOnlyList<TracedFile> Files,
    IReadOnlyList<string> Models,
    int AuditLines,
    long? QueueRows,
    IReadOnlyList<string> Sources,
    int SheetRows,
    IReadOnlyList<AuditEntry> HandedOut)
{
    /// <summary>Whether there is nothing to take away.</summary>
    public bool IsEmpty => LedgerFiles == 0 && Files.Count == 0 && Models.Count == 0 && AuditLines == 0 && QueueRows is null or 0 && Order.Originals.Count == 0 && (Order.ClipFolder is null || SheetRows == 0);
}

/// <summary>What came of it.</summary>
/// <param name="Proof">The search over all that is left of the dataset.</param>
/// <param name="QueueRowsLeft">Rows of the queue that still name a clip.</param>
/// <param name="OriginalsLeft">Source clips that were to go and are there still.</param>
public sealed record ForgetResult(TraceSearchResult Proof, long QueueRowsLeft, IReadOnlyList<string> OriginalsLeft)
{
    public bool IsClean => Proof.IsClean && QueueRowsLeft == 0 && OriginalsLeft.Count == 0;
}
