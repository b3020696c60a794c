using System.Data.Common;
using DuckDB.NET.Data;

namespace GaitSeat.Store;

/// <summary>SQL over a few named files of a table, where a look at the whole dataset would take too long.</summary>
internal static class FileQuery
{
    /// <param name="paths">Full paths of files that are there; at least one.</param>
    /// <param name="columns">Columns wanted, in order.</param>
    /// <param name="tail">What follows WHERE, beginning with a condition.</param>
    /// <exception cref="DatasetException">A file is damaged.</exception>
    internal static void Each(TableInfo table, IReadOnlyList<string> paths, IEnumerable<string> columns, string tail, Action<DbDataReader> row)
    {
        using var engine = Engine.Open(threads: 1);
        try
        {
            engine.Each($"{SchemaHistory.Ours.Migrated(table, TableView.OfFiles(paths), columns.Select(SchemaHistory.Quoted))} AND {tail}", row);
        }
        catch (DuckDBException e)
        {
            throw ReadError.Of(e, paths);
        }
    }
}
