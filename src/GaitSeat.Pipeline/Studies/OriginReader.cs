using GaitSeat.Store;
using GaitSeat.Study.Report;

namespace GaitSeat.Pipeline.Studies;

/// <summary>What is known of a run's clips and strides before any question is asked of them.</summary>
internal static class OriginReader
{
    /// <exception cref="DatasetException">The dataset cannot be read, or holds rows of a layout this program does not know.</exception>
    public static DataOrigin Read(DatasetQuery query, DatasetRun run, string folder, LeftOutClips leftOut)
    {
        // One look at each table: a season may be thousands of files.
        var where = $"pipeline_hash = '{run.PipelineHash}' AND model_hash = '{run.ModelHash}'{leftOut.SqlAndNot}";
        var strides = query.Query($"SELECT schema_version AS v, count(*) AS n, min(session_date) AS first, max(session_date) AS last FROM strides WHERE {where} GROUP BY ALL ORDER BY v");
        var clips = query.Query($"SELECT software_version AS v, status, reason, count(*) AS n, count(*) FILTER (status = 'measured' AND strides = 0) AS bare FROM clips WHERE {where} GROUP BY ALL ORDER BY ALL");
        var skipped = query.Query($"SELECT scope, reason, CAST(sum(count) AS BIGINT) AS n FROM skipped WHERE {where} GROUP BY ALL");
        return new(
            folder, run.PipelineHash, run.ModelHash, [.. clips.Select(r => (string)r["v"]!).Distinct().Order(StringComparer.Ordinal)], [.. strides.Select(r => (int)r["v"]!)], clips.Sum(r => (long)r["n"]!) + leftOut.ClipKeys.Count,
            [.. leftOut.Why.Select(w => (w.Reason, (long)w.Clips)), .. Counts(clips.Where(r => (string)r["status"]! != "measured"))], clips.Sum(r => (long)r["bare"]!), strides.Sum(r => (long)r["n"]!),
            Counts(skipped.Where(r => (string)r["scope"]! == "stride")), Counts(skipped.Where(r => (string)r["scope"]! == "frame")), strides.Min(r => (DateOnly?)r["first"]), strides.Max(r => (DateOnly?)r["last"]), []);
    }

    /// <summary>By reason, the most first.</summary>
    private static (string Reason, long Count)[] Counts(IEnumerable<IReadOnlyDictionary<string, object?>> rows) =>
    [
        .. rows.GroupBy(r => (string?)r["reason"] ?? "no reason given", r => (long)r["n"]!).Select(g => (Reason: g.Key, Count: g.Sum()))
            .OrderByDescending(c => c.Count).ThenBy(c => c.Reason, StringComparer.Ordinal),
    ];
}
