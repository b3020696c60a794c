using DuckDB.NET.Data;

namespace GaitSeat.Store;

/// <summary>Which file goes into which part.</summary>
internal sealed class PartPlan
{
    private readonly string _folder;
    private readonly Dictionary<string, (string? Season, string? Rider)> _places;

    private PartPlan(string folder, Dictionary<string, (string? Season, string? Rider)> places) => (_folder, _places) = (folder, places);

    /// <summary>Reads season and rider of every finished clip. A clip's files have the same name in every table.</summary>
    /// <exception cref="DatasetException">A file of the clips table is damaged.</exception>
    internal static PartPlan Of(string datasetFolder, SchemaHistory history)
    {
        var table = ClipsTable.Table.Info;
        var files = SourceFile.In(Path.Combine(datasetFolder, table.Name));
        var places = new Dictionary<string, (string? Season, string? Rider)>(StringComparer.Ordinal);
        foreach (var part in CompactManifest.Read(datasetFolder, table.Name)?.Parts.Where(p => CompactState.IsThere(datasetFolder, p) && CompactState.IsFresh(p, files)) ?? [])
        {
            foreach (var source in part.Sources) places[source] = (part.Season, part.Rider);
        }

        var unknown = files.Keys.Where(f => !places.ContainsKey(f)).Order(StringComparer.Ordinal).Select(f => Path.Combine(datasetFolder, table.Name, f)).ToList();
        if (unknown.Count > 0) Read(table, unknown, history, places);
        return new(datasetFolder, places);
    }

    /// <summary>The parts of a table; files that belong to no finished clip are in none.</summary>
    internal IReadOnlyList<PartGroup> Groups(TableInfo table, IReadOnlyDictionary<string, SourceFile> files)
    {
        if (!PartFolder.IsPartitioned(table)) return files.Count == 0 ? [] : [new(table, null, null, [.. files.Values])];
        return
        [
            .. files.Values.Where(f => _places.ContainsKey(f.Name))
                .GroupBy(f => PartFolder.PathOf(table, _places[f.Name].Season, _places[f.Name].Rider), StringComparer.Ordinal)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new PartGroup(table, _places[g.First().Name].Season, _places[g.First().Name].Rider, [.. g.OrderBy(f => f.Name, StringComparer.Ordinal)])),
        ];
    }

    internal string FolderOf(TableInfo table) => Path.Combine(_folder, table.Name);

    private static void Read(TableInfo table, IReadOnlyList<string> paths, SchemaHistory history, Dictionary<string, (string? Season, string? Rider)> places)
    {
        using var engine = Engine.Open();
        var source = $"(SELECT * FROM read_parquet({SqlText.Files(paths)}, union_by_name = true, hive_partitioning = false, filename = true))";
        var sql = history.Migrated(table, source, ["filename", "season", "rider"]);
        try
        {
            engine.Each(sql, r => places[Path.GetFileName(r.GetString(0))] = (r.IsDBNull(1) ? null : r.GetString(1), r.IsDBNull(2) ? null : r.GetString(2)));
        }
        catch (DuckDBException e)
        {
            throw ReadError.Of(e, paths);
        }
    }
}
