using GaitSeat.Store;

namespace GaitSeat.Cli.Privacy;

/// <summary>A line of the audit log for what is taken from a whole run or dataset: whose figures may be in it, told by their pseudonyms.</summary>
internal static class AuditNote
{
    /// <param name="pipelineHash">The beginning of the hash of the run it is taken from; null for all.</param>
    /// <param name="without">Clips that were left out of it.</param>
    /// <param name="where">A file or folder; null where it stays on the screen.</param>
    /// <exception cref="DatasetException">It cannot be written: what is not logged is not handed out.</exception>
    internal static void Add(string datasetFolder, string by, string act, string what, string? pipelineHash, IReadOnlySet<string> without, string? where)
    {
        using var query = DatasetQuery.OfTable(datasetFolder, "clips");
        var riders = query.Query("SELECT DISTINCT rider, clip_key, pipeline_hash FROM clips WHERE rider IS NOT NULL")
            .Where(r => ((string)r["pipeline_hash"]!).StartsWith(pipelineHash ?? "", StringComparison.OrdinalIgnoreCase) && !without.Contains((string)r["clip_key"]!))
            .Select(r => (string?)r["rider"]);
        new AuditLog(datasetFolder).Add(TimeProvider.System.GetUtcNow(), by, act, what, [.. riders], [], where is null ? null : Path.GetFullPath(where));
    }
}
