using System.Data.Common;
using System.Text.Json;
using GaitSeat.Pipeline.Season;
using Hangfire.PostgreSql;
using Hangfire.PostgreSql.Factories;

namespace GaitSeat.Pipeline.Privacy;

/// <summary>Takes the jobs of clips out of a queue shared on PostgreSQL, finished ones too: Hangfire keeps them with the clip's file name for a while.</summary>
public static class QueueErasure
{
    private const string Schema = "gaitseat_queue";

    /// <summary>Tables of Hangfire that hold a job's arguments or a clip's ticket, and the column of text to look in.</summary>
    private static readonly (string Table, string Column)[] Places = [("job", "arguments"), ("job", "invocationdata"), ("hash", "field"), ("hash", "value"), ("state", "data"), ("jobparameter", "value"), ("set", "value"), ("list", "value")];

    /// <summary>How many rows name one of the files.</summary>
    /// <exception cref="SeasonException">The server cannot be reached.</exception>
    public static long Count(string connection, IReadOnlyCollection<string> clipFiles) => Ask(connection, clipFiles, (db, patterns) =>
        Places.Where(p => Has(db, p)).Sum(p => Convert.ToInt64(Command(db, $"SELECT count(*) FROM {Schema}.\"{p.Table}\" WHERE {Matches(p.Column)}", patterns).ExecuteScalar(), null)));

    /// <summary>Takes them out. A job of another clip is never touched.</summary>
    /// <returns>How many rows went.</returns>
    /// <exception cref="SeasonException">The server cannot be reached.</exception>
    public static long Erase(string connection, IReadOnlyCollection<string> clipFiles) => Ask(connection, clipFiles, (db, patterns) =>
    {
        using var whole = db.BeginTransaction();
        var gone = 0L;
        // States and parameters go with their job by the schema's own foreign keys; a queue's line only points to it.
        if (Has(db, ("jobqueue", "jobid"))) gone += Run(Command(db, $"DELETE FROM {Schema}.jobqueue WHERE jobid IN (SELECT id FROM {Schema}.job WHERE {Matches("arguments")})", patterns));
        foreach (var place in Places.Where(p => Has(db, p))) gone += Run(Command(db, $"DELETE FROM {Schema}.\"{place.Table}\" WHERE {Matches(place.Column)}", patterns));
        whole.Commit();
        return gone;
    });

    /// <summary>A clip's name stands as a whole: behind a quote or at the beginning, and before a quote or the mark of a ticket.</summary>
    private static string Matches(string column) => $"\"{column}\"::text ~ ANY(@names)";

    private static T Ask<T>(string connection, IReadOnlyCollection<string> clipFiles, Func<DbConnection, string[], T> ask)
    {
        ArgumentNullException.ThrowIfNull(clipFiles);
        try
        {
            using var db = new NpgsqlConnectionFactory(connection, new PostgreSqlStorageOptions { SchemaName = Schema }).GetOrCreateConnection();
            db.Open();
            string[] spelt = [.. clipFiles.SelectMany(f => new[] { f, JsonSerializer.Serialize(f).Trim('"') }).Distinct(StringComparer.Ordinal)];
            return ask(db, [.. spelt.Select(f => $"(^|[\"\\\\]){System.Text.RegularExpressions.Regex.Replace(f, @"[^A-Za-z0-9]", m => m.Value[0] < 128 ? "\\" + m.Value : m.Value)}($|[\"\\\\|])")]);
        }
        catch (Exception e) when (e is DbException or ArgumentException or TimeoutException)
        {
            throw new SeasonException($"the queue cannot be opened, so it is not known whether it names the clips: {e.Message}");
        }
    }

    private static bool Has(DbConnection db, (string Table, string Column) place) =>
        Command(db, $"SELECT 1 FROM information_schema.columns WHERE table_schema = '{Schema}' AND table_name = '{place.Table}' AND column_name = '{place.Column}'", null).ExecuteScalar() is not null;

    private static long Run(DbCommand command) => command.ExecuteNonQuery();

    private static DbCommand Command(DbConnection db, string sql, string[]? names)
    {
        var command = db.CreateCommand();
        command.CommandText = sql;
        if (names is null) return command;
        var parameter = command.CreateParameter();
        (parameter.ParameterName, parameter.Value) = ("names", names);
        command.Parameters.Add(parameter);
        return command;
    }
}
