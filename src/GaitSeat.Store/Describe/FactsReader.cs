namespace GaitSeat.Store;

/// <summary>Counts what the describing pages say.</summary>
internal static class FactsReader
{
    private const string PopulationSql =
        """
        SELECT count(DISTINCT rider) AS riders, count(DISTINCT horse) AS horses,
               count(DISTINCT (session_date, rider, horse)) FILTER (session_date IS NOT NULL AND rider IS NOT NULL AND horse IS NOT NULL) AS sessions,
               count(DISTINCT clip_key) FILTER (status = 'measured') AS measured, count(DISTINCT clip_key) FILTER (status <> 'measured') AS set_aside,
               count(DISTINCT clip_key) FILTER (session_hash IS NULL) AS without_sheet, min(session_date) AS first, max(session_date) AS last
        FROM clips
        """;

    internal static DatasetFacts Read(string folder, DatasetAbout about, DateOnly published, string softwareVersion)
    {
        using var query = new DatasetQuery(folder);
        var p = query.Query(PopulationSql)[0];
        var seasons = query.Query("SELECT DISTINCT season FROM clips WHERE season IS NOT NULL ORDER BY season").Select(r => (string)r["season"]!);
        long N(string column) => (long)p[column]!;
        return new(
            about,
            published,
            softwareVersion,
            [.. TableList.All.Select(t => TableOf(folder, t))],
            new(N("riders"), N("horses"), N("sessions"), N("measured"), N("set_aside"), (long)query.Query("SELECT count(*) AS n FROM strides")[0]["n"]!, N("without_sheet"), (DateOnly?)p["first"], (DateOnly?)p["last"], [.. seasons]),
            [.. query.Query("SELECT scope, reason, sum(count)::BIGINT AS n FROM skipped GROUP BY ALL ORDER BY scope, n DESC, reason").Select(r => new LeftOutCount((string)r["scope"]!, (string)r["reason"]!, (long)r["n"]!))],
            [.. query.Query("SELECT pipeline_hash, model_hash, software_version, count(*) AS n FROM clips GROUP BY ALL ORDER BY n DESC, pipeline_hash, model_hash, software_version").Select(r => new RunFacts((string)r["pipeline_hash"]!, (string)r["model_hash"]!, (string)r["software_version"]!, (long)r["n"]!))]);
    }

    private static TableFacts TableOf(string folder, TableInfo table)
    {
        var parts = CompactManifest.Read(folder, table.Name)?.Parts ?? [];
        return new(table, parts.Sum(p => p.Rows), parts.Sum(p => p.Bytes), [.. parts.Select(p => p.Path)]);
    }
}
