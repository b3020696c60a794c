using DuckDB.NET.Data;

namespace GaitSeat.Store;

/// <summary>What went wrong as a message that says which file it is. The engine names the file when its end is torn off, but not when its middle is damaged.</summary>
internal static class ReadError
{
    private const string Remedy = "Take the file away and process its clips again (they then count as undone), or bring it back from a copy.";

    private const string NotAllowed = "Permission Error";

    private static readonly string[] OfStatements = [NotAllowed, "Parser Error", "Binder Error", "Catalog Error", "Conversion Error", "Out of Range Error", "INTERRUPT Error"];

    /// <param name="paths">The files that were read.</param>
    internal static DatasetException Of(DuckDBException error, IEnumerable<string> paths)
    {
        if (error.Message.Contains(SchemaHistory.NewerMark, StringComparison.Ordinal)) return Newer(error);
        return FirstDamaged(paths) is { } bad
            ? new($"'{bad.Path}' is damaged and cannot be read ({FirstLine(bad.Error)}). {Remedy}", error)
            : OfStatement(error);
    }

    /// <summary>The files are not to blame.</summary>
    internal static DatasetException OfStatement(DuckDBException error) => new(
        error.Message.StartsWith(NotAllowed, StringComparison.Ordinal)
            ? $"Only the tables of the dataset can be read; SQL reaches no other file and no network. {error.Message}"
            : $"The query cannot be answered: {error.Message}",
        error);

    /// <summary>Whether the fault may lie in the files, not in the statement. The engine's kinds of error stand at the head of its messages; its codes are not always set.</summary>
    internal static bool MayBeDamage(DuckDBException error) => !OfStatements.Any(k => error.Message.StartsWith(k, StringComparison.Ordinal));

    internal static DatasetException Newer(DuckDBException error) =>
        new($"The dataset holds {Message(error)}. Read it with the version of GaitSeat that wrote it, or a later one.", error);

    private static (string Path, string Error)? FirstDamaged(IEnumerable<string> paths)
    {
        using var engine = Engine.Open(threads: 1);
        foreach (var path in paths)
        {
            try
            {
                // Every column: a damaged one is only found by reading it.
                engine.Execute($"SELECT max(hash(COLUMNS(*))) FROM read_parquet({SqlText.Files([path])}, hive_partitioning = false)");
            }
            catch (DuckDBException e)
            {
                return (path, e.Message);
            }
        }

        return null;
    }

    private static string Message(DuckDBException error) => FirstLine(error.Message[error.Message.IndexOf(SchemaHistory.NewerMark, StringComparison.Ordinal)..]);

    private static string FirstLine(string text) => text.Split('\n')[0].Trim();
}
