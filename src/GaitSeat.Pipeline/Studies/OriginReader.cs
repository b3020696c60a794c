using GaitSeat.Model;
using GaitSeat.Store;
using GaitSeat.Study.Report;

namespace GaitSeat.Pipeline.Studies;

/// <summary>What is known of a run's clips and strides before any question is asked of them.</summary>
internal static class OriginReader
{
    /// <exception cref="DatasetException">The dataset cannot be read, holds rows of several layouts, or of one this program does not know.</exception>
    public static DataOrigin Read(DatasetQuery query, DatasetRun run, string folder)
    {
        // One look at each table: a season may be thousands of files.
        var where = $"pipeline_hash = '{run.PipelineHash}' AND model_hash = '{run.ModelHash}'";
        var strides = query.Query($"SELECT schema_version AS v, count(*) AS n, min(session_date) AS first, max(session_date) AS last FROM strides WHERE {where} GROUP BY ALL ORDER BY v");
        var clips = query.Query($"SELECT software_version AS v, status, reason, count(*) AS n, count(*) FILTER (status = 'measured' AND strides = 0) AS bare FROM clips WHERE {where} GROUP BY ALL ORDER BY ALL");
        var skipped = query.Query($"SELECT scope, reason, CAST(sum(count) AS BIGINT) AS n FROM skipped WHERE {where} GROUP BY ALL");
        return new(
            folder, run.PipelineHash, run.ModelHash, [.. clips.Select(r => (string)r["v"]!).Distinct().Order(StringComparer.Ordinal)], Schema(strides), clips.Sum(r => (long)r["n"]!),
            Counts(clips.Where(r => (string)r["status"]! != "measured")), clips.Sum(r => (long)r["bare"]!), strides.Sum(r => (long)r["n"]!),
            Counts(skipped.Where(r => (string)r["scope"]! == "stride")), Counts(skipped.Where(r => (string)r["scope"]! == "frame")), strides is [var one] ? (DateOnly?)one["first"] : null, strides is [var same] ? (DateOnly?)same["last"] : null, []);
    }

    private static int Schema(IReadOnlyList<IReadOnlyDictionary<string, object?>> strides)
    {
        var found = strides.Select(r => (Version: (int)r["v"]!, Rows: (long)r["n"]!)).ToArray();
        if (found.Length > 1)
            throw new DatasetException($"The dataset holds strides of several layouts ({string.Join(", ", found.Select(f => $"schema version {f.Version}: {f.Rows} rows"))}), whose columns need not mean the same. Measure the older clips again, or keep one layout a dataset.");
        if (found is [var one] && one.Version > Provenance.CurrentSchemaVersion)
            throw new DatasetException($"The dataset has schema version {one.Version}; this program knows versions up to {Provenance.CurrentSchemaVersion}. Use the program that wrote it, or a newer one.");
        return found is [var only] ? only.Version : Provenance.CurrentSchemaVersion;
    }

    /// <summary>By reason, the most first.</summary>
    private static (string Reason, long Count)[] Counts(IEnumerable<IReadOnlyDictionary<string, object?>> rows) =>
    [
        .. rows.GroupBy(r => (string?)r["reason"] ?? "no reason given", r => (long)r["n"]!).Select(g => (Reason: g.Key, Count: g.Sum()))
            .OrderByDescending(c => c.Count).ThenBy(c => c.Reason, StringComparer.Ordinal),
    ];
}
