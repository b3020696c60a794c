namespace GaitSeat.Store;

/// <summary>Files of one table that go into one part.</summary>
internal sealed record PartGroup(TableInfo Table, string? Season, string? Rider, IReadOnlyList<SourceFile> Files)
{
    internal string Path => PartFolder.PathOf(Table, Season, Rider);

    internal string Fingerprint => field ??= SourceFile.Fingerprint(Files);
}
