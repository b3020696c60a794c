using GaitSeat.Store;

namespace GaitSeat.Review.Seasons;

/// <summary>What the sheet says of a clip of the run, and what became of it.</summary>
/// <param name="OtherGaits">Spells of other gaits than rising trot: told apart, not measured.</param>
internal sealed record ClipLine(string ClipKey, string ClipFile, string? Rider, string? Horse, DateOnly? Day, double? LeatherCm, double? StirrupHole, bool IsSetAside, string? Reason, string? Detail, int OtherGaits);

/// <summary>Something left out of a clip, by reason.</summary>
internal sealed record LeftOutLine(string ClipKey, string Scope, string Reason, int Count, string Detail);

/// <summary>A change of stirrup length that the run found in the strides.</summary>
/// <param name="ClipKeys">The clips it was found in; it may be shown where all of them may.</param>
internal sealed record FoundChange(IReadOnlyList<string> ClipKeys, string? Rider, DateOnly? Day, string Direction, double ChanceProbability);

/// <summary>What the season screen needs beyond the spells, read once.</summary>
internal sealed record SeasonFacts(IReadOnlyList<ClipLine> Clips, IReadOnlyList<LeftOutLine> LeftOut, IReadOnlyList<FoundChange> Changes)
{
    /// <exception cref="DatasetException">The dataset cannot be read.</exception>
    internal static SeasonFacts Read(DatasetQuery query, DatasetRun run)
    {
        IEnumerable<IReadOnlyDictionary<string, object?>> Rows(string sql) => query.Query(sql).Where(r => (string)r["pipeline_hash"]! == run.PipelineHash && (string)r["model_hash"]! == run.ModelHash);
        const string runColumns = "pipeline_hash, model_hash";
        var gaits = Rows($"SELECT clip_key, {runColumns}, CAST(count(*) AS INTEGER) AS n FROM spells WHERE gait <> 'rising_trot' GROUP BY ALL").ToDictionary(r => (string)r["clip_key"]!, r => (int)r["n"]!, StringComparer.Ordinal);
        return new(
            [.. Rows($"SELECT clip_key, clip_file, rider, horse, session_date, leather_cm, stirrup_hole, status, reason, detail, {runColumns} FROM clips ORDER BY session_date, clip_file")
                .Select(r => new ClipLine(
                    (string)r["clip_key"]!, (string)r["clip_file"]!, (string?)r["rider"], (string?)r["horse"], (DateOnly?)r["session_date"], (double?)r["leather_cm"], (double?)r["stirrup_hole"],
                    (string)r["status"]! != "measured", (string?)r["reason"], (string?)r["detail"], gaits.GetValueOrDefault((string)r["clip_key"]!)))],
            [.. Rows($"SELECT clip_key, scope, reason, CAST(sum(count) AS INTEGER) AS n, min(detail) AS detail, {runColumns} FROM skipped GROUP BY ALL")
                .Select(r => new LeftOutLine((string)r["clip_key"]!, (string)r["scope"]!, (string)r["reason"]!, (int)r["n"]!, (string)r["detail"]!))],
            [
                .. Rows($"SELECT DISTINCT clip_key, rider, session_date, direction, before_end_s, chance_probability, {runColumns} FROM changes")
                    .Select(r => new FoundChange([(string)r["clip_key"]!], (string?)r["rider"], (DateOnly?)r["session_date"], (string)r["direction"]!, (double)r["chance_probability"]!)),
                // Within a clip it stands in both tables.
                .. Rows($"SELECT DISTINCT clip_keys, clip_before, clip_after, rider, session_date, direction, before_end_s, chance_probability, {runColumns} FROM sessions WHERE what = 'stirrup_change' AND clip_before <> clip_after")
                    .Select(r => new FoundChange(((string)r["clip_keys"]!).Split(','), (string?)r["rider"], (DateOnly?)r["session_date"], (string)r["direction"]!, (double?)r["chance_probability"] ?? double.NaN)),
            ]);
    }
}
