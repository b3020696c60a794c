using GaitSeat.Model;
using GaitSeat.Motion.Sessions;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Season;

/// <summary>The strides of one rider on one horse on one day.</summary>
/// <param name="ClipKeys">By clip number.</param>
/// <param name="ClipFiles">By clip number.</param>
internal sealed record RiddenSession(SessionKey Key, IReadOnlyList<string> ClipKeys, IReadOnlyList<string> ClipFiles, IReadOnlyList<SessionStride> Strides);

/// <summary>
/// Gathers the strides of a run into sessions. Clips go by file name, in ordinal order: cameras number upwards (common practice, no source), and the sheet has no hour.
/// Strides whose sheet names no day, rider or horse belong to no session.
/// </summary>
internal static class SessionReader
{
    private static readonly string[] Place =
        ["clip_key", "clip_file", "session_date", "rider", "horse", "rein", "facing", "spell", "stride", "start_s", "top_s", "end_s", "confidence", "quality"];

    public static IReadOnlyList<RiddenSession> Read(Dataset dataset, string pipelineHash, string modelHash)
    {
        var columns = string.Join(", ", [.. Place, .. MeasureCatalogue.All.SelectMany(m => new[] { m.Column, m.StandardErrorColumn })]);
        var sql =
            $"SELECT {columns} FROM strides WHERE pipeline_hash = '{Hash(pipelineHash)}' AND model_hash = '{Hash(modelHash)}' " +
            "AND session_date IS NOT NULL AND rider IS NOT NULL AND horse IS NOT NULL ORDER BY session_date, rider, horse, clip_file, clip_key, start_s";
        using var query = new DatasetQuery(dataset.Folder);
        return [.. query.Query(sql).GroupBy(KeyOf).Select(g => Session(g.Key, [.. g]))];
    }

    /// <summary>Hashes go into the statement as they are.</summary>
    private static string Hash(string hash) =>
        hash.All(char.IsAsciiLetterOrDigit) ? hash : throw new ArgumentException($"'{hash}' is no hash: letters and digits only.", nameof(hash));

    private static SessionKey KeyOf(IReadOnlyDictionary<string, object?> row) => new((DateOnly)row["session_date"]!, (string)row["rider"]!, (string)row["horse"]!);

    private static RiddenSession Session(SessionKey key, IReadOnlyDictionary<string, object?>[] rows)
    {
        var clips = rows.Select(r => (Key: (string)r["clip_key"]!, File: (string)r["clip_file"]!)).Distinct().ToList();
        return new(
            key,
            [.. clips.Select(c => c.Key)],
            [.. clips.Select(c => c.File)],
            [.. rows.Select(r => new SessionStride(clips.FindIndex(c => c.Key == (string)r["clip_key"]! && c.File == (string)r["clip_file"]!), (string?)r["rein"], StrideOf(r)))]);
    }

    private static Stride StrideOf(IReadOnlyDictionary<string, object?> row)
    {
        var measures = new MeasureSet();
        foreach (var m in MeasureCatalogue.All) measures[m.Measure] = new(Real(row, m.Column), Real(row, m.StandardErrorColumn));
        var facing = (string?)row["facing"] switch { "left" => Facing.Left, "right" => Facing.Right, _ => Facing.Unknown };
        return new(
            (int)row["spell"]!, (int)row["stride"]!, facing, Real(row, "start_s"), Real(row, "top_s"), Real(row, "end_s"), Real(row, "confidence"), (string)row["quality"]!, measures);
    }

    private static double Real(IReadOnlyDictionary<string, object?> row, string column) => row[column] as double? ?? double.NaN;
}
