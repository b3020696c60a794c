namespace GaitSeat.Store;

/// <summary>A table as it stands in the compacted copy.</summary>
/// <param name="Paths">Parts, relative to the compact folder, with slashes.</param>
internal sealed record TableFacts(TableInfo Table, long Rows, long Bytes, IReadOnlyList<string> Paths)
{
    /// <summary>Columns inside the files, in order.</summary>
    internal IEnumerable<ColumnInfo> InFiles => Table.Columns.Where(c => !PartFolder.IsPartitioned(Table) || !PartFolder.Keys.Contains(c.Name));

    /// <summary>Columns that stand in the folders' names.</summary>
    internal IEnumerable<ColumnInfo> InFolders => PartFolder.IsPartitioned(Table) ? PartFolder.Keys.Select(k => ClipsTable.Table.Info.Columns.Single(c => c.Name == k)) : [];
}

/// <summary>Who and what a dataset is of.</summary>
internal sealed record Population(
    long Riders, long Horses, long Sessions, long ClipsMeasured, long ClipsSetAside, long Strides, long ClipsWithoutSheet, DateOnly? First, DateOnly? Last, IReadOnlyList<string> Seasons);

/// <summary>What was left out, by reason.</summary>
internal sealed record LeftOutCount(string Scope, string Reason, long Count);

/// <summary>A run whose rows the dataset holds.</summary>
internal sealed record RunFacts(string PipelineHash, string ModelHash, string SoftwareVersion, long Clips);

/// <summary>All that the describing pages say of a compacted dataset, counted in it.</summary>
internal sealed record DatasetFacts(
    DatasetAbout About,
    DateOnly Published,
    string SoftwareVersion,
    IReadOnlyList<TableFacts> Tables,
    Population Population,
    IReadOnlyList<LeftOutCount> LeftOut,
    IReadOnlyList<RunFacts> Runs)
{
    /// <summary>Tables with at least one row: others have no file.</summary>
    internal IEnumerable<TableFacts> Filled => Tables.Where(t => t.Paths.Count > 0);
}
