namespace GaitSeat.Store;

/// <summary>A table outside the dataset's ledger, such as the errors of an accuracy run: the same Parquet, written whole or not at all.</summary>
public sealed class LooseTable<TRow>
{
    private readonly Table<TRow> _table;

    /// <param name="about">What the table holds, a sentence.</param>
    /// <param name="columns">At least one; names differ.</param>
    public LooseTable(string name, string about, IReadOnlyList<LooseColumn<TRow>> columns)
    {
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentOutOfRangeException.ThrowIfZero(columns.Count);
        if (columns.GroupBy(c => c.Info.Name, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"Two columns are called '{twice.Key}'.", nameof(columns));
        _table = new(name, about, columns.Select(c => c.Inner), _ => []);
    }

    public TableInfo Info => _table.Info;

    /// <summary>Writes the file; one of the same name is replaced.</summary>
    /// <exception cref="DatasetException">What was written does not read back.</exception>
    public Task WriteAsync(IReadOnlyList<TRow> rows, string path, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentException.ThrowIfNullOrEmpty(path);
        return AtomicParquet.WriteAsync(_table, stream => _table.WriteAsync(rows, stream, cancellationToken), path, cancellationToken);
    }
}

/// <summary>A column of a <see cref="LooseTable{TRow}"/>; see <see cref="LooseColumn"/>.</summary>
public sealed class LooseColumn<TRow>
{
    internal LooseColumn(Column<TRow> inner) => Inner = inner;

    public ColumnInfo Info => Inner.Info;

    internal Column<TRow> Inner { get; }
}

/// <summary>Makes columns. Numbers that are not finite become null.</summary>
public static class LooseColumn
{
    /// <param name="nullMeans">What a null says; without it a null is an error.</param>
    public static LooseColumn<TRow> Text<TRow>(string name, string definition, Func<TRow, string?> get, string? nullMeans = null) =>
        new(Columns.Text(name, definition, get, nullMeans));

    /// <inheritdoc cref="Text"/>
    public static LooseColumn<TRow> Real<TRow>(string name, string unit, string definition, Func<TRow, double?> get, string? nullMeans = null) =>
        new(Columns.Real(name, unit, definition, get, nullMeans));

    /// <inheritdoc cref="Text"/>
    public static LooseColumn<TRow> Whole<TRow>(string name, string unit, string definition, Func<TRow, int?> get, string? nullMeans = null) =>
        new(Columns.Whole(name, unit, definition, get, nullMeans));
}
