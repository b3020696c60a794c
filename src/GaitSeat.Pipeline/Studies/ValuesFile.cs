using System.Security.Cryptography;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Studies;

/// <summary>A user's CSV with values beside the strides, such as a coach's. The columns it shares with the strides tell which strides a line is of.</summary>
internal sealed class ValuesFile
{
    private static readonly string[] Keys = ["clip_key", "clip_file", "season", "session_date", "rider", "horse", "rein", "spell", "stride"];

    private readonly string[] _keys;

    /// <exception cref="DatasetException">Not there, no CSV, without a shared column, or two lines of the same strides.</exception>
    public ValuesFile(DatasetQuery query, string path, string name)
    {
        if (!File.Exists(path)) throw new DatasetException($"There is no file '{path}', which the study names as values_file.");
        Name = name;
        Sql = $"read_csv('{path.Replace("'", "''", StringComparison.Ordinal)}', header = true, all_varchar = true)";
        Sha256 = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path)));
        string[] columns = [.. query.Query($"SELECT column_name FROM (DESCRIBE SELECT * FROM {Sql})").Select(r => (string)r["column_name"]!)];
        _keys = [.. Keys.Intersect(columns)];
        if (_keys.Length == 0) throw new DatasetException($"'{name}' shares no column with the strides; give one of {string.Join(", ", Keys)}. It has {string.Join(", ", columns)}.");
        Columns = [.. columns.Except(Keys).Select(c => (c, IsNumber(query, c)))];
        Lines = Count(query, $"SELECT count(*) AS n FROM {Sql}");
        if (query.Query($"SELECT {KeyList}, count(*) AS n FROM {Sql} GROUP BY ALL HAVING count(*) > 1 ORDER BY ALL LIMIT 1") is [var twice])
            throw new DatasetException($"'{name}' has {twice["n"]} lines for {string.Join(", ", _keys.Select(k => $"{k} {twice[k]}"))}; one is allowed.");
    }

    /// <summary>As the study file names it.</summary>
    public string Name { get; }

    public string Sha256 { get; }

    public long Lines { get; }

    /// <summary>Columns besides the keys, and whether all their values are numbers.</summary>
    public IReadOnlyList<(string Column, bool IsNumber)> Columns { get; }

    /// <summary>The table to select from.</summary>
    public string Sql { get; }

    /// <summary>Strides are <c>s</c>, lines are <c>v</c>.</summary>
    public string JoinCondition => string.Join(" AND ", _keys.Select(k => $"CAST(s.{k} AS VARCHAR) = trim(v.{k})"));

    private string KeyList => string.Join(", ", _keys);

    /// <summary>Lines that belong to no stride of the dataset.</summary>
    public long Unmatched(DatasetQuery query) => Count(query, $"SELECT count(*) AS n FROM {Sql} v WHERE NOT EXISTS (SELECT 1 FROM strides s WHERE {JoinCondition})");

    private bool IsNumber(DatasetQuery query, string column)
    {
        var name = "\"" + column.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
        return Count(query, $"SELECT count(*) AS n FROM {Sql} WHERE trim({name}) <> '' AND TRY_CAST({name} AS DOUBLE) IS NULL") == 0;
    }

    private static long Count(DatasetQuery query, string sql) => (long)query.Query(sql)[0]["n"]!;
}
