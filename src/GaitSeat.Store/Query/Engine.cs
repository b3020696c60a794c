using System.Data.Common;
using DuckDB.NET.Data;

namespace GaitSeat.Store;

/// <summary>A DuckDB in memory.</summary>
internal sealed class Engine : IDisposable
{
    private readonly DuckDBConnection _connection = new("DataSource=:memory:");

    private Engine()
    {
    }

    /// <param name="threads">How many cores to use; null for all.</param>
    internal static Engine Open(int? threads = null)
    {
        var engine = new Engine();
        engine._connection.Open();
        // What does not fit into memory spills to the system's folder for such things, not to the folder the program happens to stand in.
        engine.Execute($"SET temp_directory = {SqlText.Literal(Path.Combine(Path.GetTempPath(), "gaitseat-spill"))}");
        // Each file is read once: kept in memory, those of a whole season fill gigabytes.
        engine.Execute("SET enable_external_file_cache = false");
        if (threads is { } n) engine.Execute(FormattableString.Invariant($"SET threads = {n}"));
        return engine;
    }

    internal void Execute(string sql) => Run(sql, command => command.ExecuteNonQuery());

    internal object? Scalar(string sql) => Run(sql, command => command.ExecuteScalar());

    /// <summary>Hands out row after row.</summary>
    internal void Each(string sql, Action<DbDataReader> row) => Run(sql, command =>
    {
        using var reader = command.ExecuteReader();
        while (reader.Read()) row(reader);
        return true;
    });

    internal T Run<T>(string sql, Func<DbCommand, T> use)
    {
        using var command = _connection.CreateCommand();
        command.CommandText = sql;
        return use(command);
    }

    public void Dispose() => _connection.Dispose();
}
