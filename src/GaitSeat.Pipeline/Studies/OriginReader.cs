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
        var where = $"pipeline_hash = '{run.PipelineHash}' AND model_hash = '{run.ModelHash}'";
        var schema = Schema(query, where);
        var clips = query.Query($"SELECT count(*) AS clips, count(*) FILTER (status = 'measured' AND strides = 0) AS bare FROM clips WHERE {where}")[0];
        var strides = query.Query($"SELECT count(*) AS n, min(session_date) AS first, max(session_date) AS last FROM strides WHERE {where}")[0];
        string[] versions = [.. query.Query($"SELECT DISTINCT software_version AS v FROM clips WHERE {where} ORDER BY v").Select(r => (string)r["v"]!)];
        return new(
            folder, run.PipelineHash, run.ModelHash, versions, schema, (long)clips["clips"]!,
            Counts(query, $"SELECT reason, count(*) AS n FROM clips WHERE {where} AND status <> 'measured' GROUP BY reason"), (long)clips["bare"]!, (long)strides["n"]!,
            Counts(query, Skipped("stride")), Counts(query, Skipped("frame")), (DateOnly?)strides["first"], (DateOnly?)strides["last"], []);

        string Skipped(string scope) => $"SELECT reason, CAST(sum(count) AS BIGINT) AS n FROM skipped WHERE {where} AND scope = '{scope}' GROUP BY reason";
    }

    private static int Schema(DatasetQuery query, string where)
    {
        var found = query.Query($"SELECT schema_version AS v, count(*) AS n FROM strides WHERE {where} GROUP BY ALL ORDER BY v").Select(r => (Version: (int)r["v"]!, Rows: (long)r["n"]!)).ToArray();
        if (found.Length > 1)
            throw new DatasetException($"The dataset holds strides of several layouts ({string.Join(", ", found.Select(f => $"schema version {f.Version}: {f.Rows} rows"))}), whose columns need not mean the same. Measure the older clips again, or keep one layout a dataset.");
        if (found is [var one] && one.Version > Provenance.CurrentSchemaVersion)
            throw new DatasetException($"The dataset has schema version {one.Version}; this program knows versions up to {Provenance.CurrentSchemaVersion}. Use the program that wrote it, or a newer one.");
        return found is [var only] ? only.Version : Provenance.CurrentSchemaVersion;
    }

    private static (string, long)[] Counts(DatasetQuery query, string sql) =>
        [.. query.Query($"{sql} ORDER BY n DESC, reason").Select(r => ((string?)r["reason"] ?? "no reason given", (long)r["n"]!))];
}
