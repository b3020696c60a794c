using System.Data.Common;
using DuckDB.NET.Data;

namespace GaitSeat.Store;

/// <summary>SQL over a dataset folder: one view a table, empty ones too. A look at the moment of opening; later files are not seen.</summary>
public sealed class DatasetQuery : IDisposable
{
    private readonly string _folder;
    private readonly Engine _engine;
    private readonly Func<TableInfo, string> _view;
    private readonly HashSet<string> _shown = [];

    /// <exception cref="DatasetException">There is no such folder, or a file in it is damaged.</exception>
    public DatasetQuery(string folder)
        : this(folder, null, SchemaHistory.Ours) => Show(_ => true);

    /// <summary>One view alone, which spares a look at all the other tables' files.</summary>
    /// <exception cref="DatasetException">As for <see cref="DatasetQuery(string)"/>.</exception>
    public static DatasetQuery OfTable(string folder, string table)
    {
        var query = new DatasetQuery(folder, null, SchemaHistory.Ours);
        query.Show(t => t.Name == table);
        return query;
    }

    /// <summary>Opens without a view yet; see <see cref="Show"/>.</summary>
    /// <param name="where">A condition on the rows of every table; null for all rows.</param>
    internal DatasetQuery(string folder, string? where, SchemaHistory history)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        if (!Directory.Exists(folder)) throw new DatasetException($"There is no dataset folder '{folder}'. Give the folder a run has written to.");
        _folder = Path.GetFullPath(folder);
        _engine = Engine.Open();
        _view = table => TableView.Sql(table, _folder, where, history);
    }

    /// <summary>Makes the views that are wanted and not there yet. Each costs a look at the table's files, so who knows what will be asked asks for no more.</summary>
    /// <exception cref="DatasetException">A file is damaged.</exception>
    internal void Show(Predicate<TableInfo> wanted)
    {
        foreach (var table in TableList.All.Where(t => wanted(t) && _shown.Add(t.Name))) Run(_view(table), command => command.ExecuteNonQuery());
    }

    /// <summary>Runs one statement.</summary>
    /// <returns>Rows as column name to value: text, int, long, double, <see cref="DateOnly"/>, bool; null for null.</returns>
    /// <exception cref="DatasetException">The statement is wrong, or a file is damaged.</exception>
    public IReadOnlyList<IReadOnlyDictionary<string, object?>> Query(string sql)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(sql);
        return Run(sql, command =>
        {
            using var reader = command.ExecuteReader();
            var rows = new List<IReadOnlyDictionary<string, object?>>();
            while (reader.Read()) rows.Add(RowOf(reader));
            return rows;
        });
    }

    /// <summary>Hands out row after row without keeping them, for tables too large to hold twice. The action asks nothing of this query meanwhile.</summary>
    /// <exception cref="DatasetException">The statement is wrong, or a file is damaged.</exception>
    public void Each(string sql, Action<DbDataReader> row) => Run(sql, command =>
    {
        ((DuckDBCommand)command).UseStreamingMode = true;
        using var reader = command.ExecuteReader();
        while (reader.Read()) row(reader);
        return true;
    });

    internal T Run<T>(string sql, Func<DbCommand, T> use)
    {
        try
        {
            return _engine.Run(sql, use);
        }
        catch (DuckDBException e)
        {
            if (e.Message.Contains(SchemaHistory.NewerMark, StringComparison.Ordinal)) throw ReadError.Newer(e);
            throw ReadError.MayBeDamage(e)
                ? ReadError.Of(e, TableList.All.SelectMany(t => TableView.FilesRead(t, _folder)))
                : ReadError.OfStatement(e);
        }
    }

    public void Dispose() => _engine.Dispose();

    private static Dictionary<string, object?> RowOf(DbDataReader reader)
    {
        var row = new Dictionary<string, object?>(reader.FieldCount, StringComparer.Ordinal);
        for (var i = 0; i < reader.FieldCount; i++) row[reader.GetName(i)] = reader.IsDBNull(i) ? null : reader.GetValue(i);
        return row;
    }
}
