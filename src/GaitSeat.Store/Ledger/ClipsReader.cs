using GaitSeat.Model;
using Parquet;

namespace GaitSeat.Store;

/// <summary>Reads the clips table back.</summary>
internal static class ClipsReader
{
    private const string Sql =
        """
        SELECT clip_key, clip_file, pipeline_hash, model_hash, status, reason, detail, session_date, rider, horse,
               duration_s, frames_analysed, frames_left_out, strides, flagged
        FROM clips ORDER BY clip_file, clip_key, pipeline_hash, model_hash
        """;

    internal static IReadOnlyList<ClipRow> Read(Dataset dataset)
    {
        using var query = new DatasetQuery(dataset.Folder);
        return [.. query.Query(Sql).Select(ToRow)];
    }

    /// <summary>Whether the one row of a clips file carries this hash; a file that cannot be read carries none.</summary>
    internal static bool HasSessionHash(string path, string? hash)
    {
        try
        {
            return SessionHashAsync(path).GetAwaiter().GetResult() == hash;
        }
        catch (Exception e) when (e is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static async Task<string?> SessionHashAsync(string path)
    {
        await using var reader = await ParquetReader.CreateAsync(path);
        using var group = reader.OpenRowGroupReader(0);
        var value = new string?[1];
        await group.ReadAsync(reader.Schema.FindDataField("session_hash"), value.AsMemory()!);
        return value[0];
    }

    private static ClipRow ToRow(IReadOnlyDictionary<string, object?> row) => new(
        (string)row["clip_key"]!,
        (string)row["clip_file"]!,
        (string)row["pipeline_hash"]!,
        (string)row["model_hash"]!,
        (string)row["status"]! == ClipStatus.SetAside.ToTerm() ? ClipStatus.SetAside : ClipStatus.Measured,
        (string?)row["reason"],
        (string?)row["detail"],
        (DateOnly?)row["session_date"],
        (string?)row["rider"],
        (string?)row["horse"],
        (double?)row["duration_s"],
        (int)row["frames_analysed"]!,
        (int)row["frames_left_out"]!,
        (int)row["strides"]!,
        (int)row["flagged"]!);
}
