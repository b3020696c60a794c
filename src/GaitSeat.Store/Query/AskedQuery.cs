using System.Data.Common;
using System.Text.Json;

namespace GaitSeat.Store;

/// <summary>
/// A user's question to a dataset, in SQL. It can read the tables and nothing else: one statement, a query; no file outside the dataset, no network, no extension
/// is loaded, and the statement cannot lift that.
/// </summary>
public sealed class AskedQuery : IDisposable
{
    private readonly DatasetQuery _query;
    private readonly string? _file;

    private AskedQuery(DatasetQuery query, string? file) => (_query, _file) = (query, file);

    /// <param name="pipelineHash">The beginning of the pipeline hash whose rows are asked for; null for all rows.</param>
    /// <param name="file">The one file an answer may be written to; null where none is.</param>
    /// <exception cref="DatasetException">There is no such dataset, it is damaged, or no run begins so.</exception>
    public static AskedQuery Open(string datasetFolder, string? pipelineHash, string? file)
    {
        var folder = Path.GetFullPath(datasetFolder);
        var query = new DatasetQuery(folder, WhereOf(pipelineHash), SchemaHistory.Ours);
        try
        {
            if (pipelineHash is not null) query.Show(t => t.Name == ClipsTable.Name);
            if (pipelineHash is not null && (long)query.Query("SELECT count(*) AS n FROM clips")[0]["n"]! == 0)
                throw new DatasetException($"No run has a pipeline hash that begins with '{pipelineHash}'. The question 'runs' lists them.");
            Shut(query, folder, file);
            return new(query, file);
        }
        catch
        {
            query.Dispose();
            throw;
        }
    }

    /// <exception cref="DatasetException">The SQL is no single query, names what is not there, or a file is damaged.</exception>
    public Answer Ask(string sql, int rows)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        return Run(Checked(sql), command =>
        {
            using var reader = command.ExecuteReader();
            var names = Enumerable.Range(0, reader.FieldCount).Select(reader.GetName).ToList();
            var found = new List<IReadOnlyList<object?>>();
            while (reader.Read())
            {
                if (found.Count == rows) return new Answer(names, found, More: true);
                found.Add([.. Enumerable.Range(0, reader.FieldCount).Select(i => reader.IsDBNull(i) ? null : reader.GetValue(i))]);
            }

            return new(names, found, More: false);
        });
    }

    /// <summary>Writes all rows to the file named at opening.</summary>
    /// <returns>How many rows.</returns>
    /// <exception cref="DatasetException">As with <see cref="Ask"/>, or the file cannot be written.</exception>
    public long Save(string sql, AnswerFormat format)
    {
        if (_file is null) throw new InvalidOperationException("No file was named at opening.");
        var options = format switch
        {
            AnswerFormat.Csv => "FORMAT csv, HEADER true",
            AnswerFormat.Json => "FORMAT json, ARRAY true",
            _ => "FORMAT parquet, COMPRESSION zstd",
        };
        return Run($"COPY ({Checked(sql)}\n) TO {SqlText.Literal(_file)} ({options}, USE_TMP_FILE false)", command => Convert.ToInt64(command.ExecuteNonQuery()));
    }

    public void Dispose() => _query.Dispose();

    /// <summary>Nothing but the tables' folders can be read, nothing but the answer's file written; then the lock on the settings.</summary>
    private static void Shut(DatasetQuery query, string folder, string? file)
    {
        // Both as they are called and as a pattern writes them: the engine asks about either.
        var folders = TableList.All.Select(t => t.Name).Append(PartFolder.Name).Select(n => Path.Combine(folder, n) + Path.DirectorySeparatorChar)
            .SelectMany(f => new[] { f, SqlText.Pattern(f) }).Distinct().Select(SqlText.Literal);
        string[] settings =
        [
            $"allowed_directories = [{string.Join(", ", folders)}]",
            $"allowed_paths = [{(file is null ? "" : SqlText.Literal(file))}]",
            "autoinstall_known_extensions = false",
            "autoload_known_extensions = false",
            "enable_external_access = false",
            "lock_configuration = true",
        ];
        foreach (var setting in settings) query.Run("SET " + setting, command => command.ExecuteNonQuery());
    }

    /// <summary>The engine's own parser says whether it is one query: it can only describe those that read.</summary>
    private string Checked(string sql)
    {
        if (string.IsNullOrWhiteSpace(sql)) throw new DatasetException("The question is empty. Write a query such as: select rider, count(*) from strides group by rider");
        using var parsed = JsonDocument.Parse((string)_query.Run($"SELECT json_serialize_sql({SqlText.Literal(sql)})", command => command.ExecuteScalar())!);
        if (parsed.RootElement.GetProperty("error").GetBoolean())
        {
            throw new DatasetException(parsed.RootElement.GetProperty("error_type").GetString() == "not implemented"
                ? "Only a query that reads is allowed (select, from, with, values, describe, summarize). The dataset cannot be changed from SQL."
                : $"The question is not valid SQL: {parsed.RootElement.GetProperty("error_message").GetString()}");
        }

        _query.Show(t => MayRead(sql, t.Name));
        var statements = parsed.RootElement.GetProperty("statements");
        if (statements.GetArrayLength() != 1) throw new DatasetException($"One query is allowed; there are {statements.GetArrayLength()}.");
        var text = sql.Trim().TrimEnd(';', ' ', '\n', '\r', '\t');
        // Statements that tell of tables are queries only inside another.
        return IsShown(statements[0]) ? $"SELECT * FROM ({text}\n)" : text;
    }

    /// <summary>A query that names its tables at run time, or asks which there are, gets all of them.</summary>
    private static bool MayRead(string sql, string table) =>
        new[] { table, "query", "schema", "show", "duckdb_" }.Any(word => sql.Contains(word, StringComparison.OrdinalIgnoreCase));

    private static bool IsShown(JsonElement statement) =>
        statement.GetProperty("node") is var node && node.TryGetProperty("from_table", out var from) && from.GetProperty("type").GetString() == "SHOW_REF";

    private T Run<T>(string sql, Func<DbCommand, T> use) => _query.Run(sql, use);

    private static string? WhereOf(string? pipelineHash)
    {
        if (pipelineHash is null) return null;
        if (pipelineHash.Length == 0 || !pipelineHash.All(char.IsAsciiLetterOrDigit)) throw new DatasetException($"'{pipelineHash}' is not the beginning of a pipeline hash: letters and digits only.");
        return $"starts_with(pipeline_hash, {SqlText.Literal(pipelineHash.ToLowerInvariant())})";
    }
}
