using Parquet;
using Parquet.Schema;

namespace GaitSeat.Store;

/// <summary>A column: its description, and how its values are had from the rows.</summary>
internal abstract class Column<TRow>(ColumnInfo info)
{
    internal ColumnInfo Info { get; } = info;

    internal abstract Type ClrType { get; }

    internal DataField NewField() => new(Info.Name, ClrType, isNullable: Info.NullMeans is not null);

    internal abstract Task WriteAsync(ParquetRowGroupWriter group, DataField field, IReadOnlyList<TRow> rows, CancellationToken cancellationToken);

    protected InvalidOperationException Unfilled() =>
        new($"Column '{Info.Name}' may not be null, and a row has no value for it.");
}

internal sealed class TextColumn<TRow>(ColumnInfo info, Func<TRow, string?> get) : Column<TRow>(info)
{
    internal override Type ClrType => typeof(string);

    internal override Task WriteAsync(ParquetRowGroupWriter group, DataField field, IReadOnlyList<TRow> rows, CancellationToken cancellationToken)
    {
        var values = new string?[rows.Count];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = get(rows[i]);
            if (values[i] is null && Info.NullMeans is null) throw Unfilled();
        }

        return group.WriteAsync(field, values!);
    }
}

internal sealed class ValueColumn<TRow, T>(ColumnInfo info, Func<TRow, T?> get) : Column<TRow>(info)
    where T : struct
{
    internal override Type ClrType => typeof(T);

    internal override Task WriteAsync(ParquetRowGroupWriter group, DataField field, IReadOnlyList<TRow> rows, CancellationToken cancellationToken)
    {
        if (Info.NullMeans is null)
        {
            var filled = new T[rows.Count];
            for (var i = 0; i < filled.Length; i++) filled[i] = get(rows[i]) ?? throw Unfilled();
            return group.WriteAsync<T>(field, (ReadOnlyMemory<T>)filled, cancellationToken: cancellationToken);
        }

        var values = new T?[rows.Count];
        for (var i = 0; i < values.Length; i++) values[i] = get(rows[i]);
        return group.WriteAsync<T>(field, (ReadOnlyMemory<T?>)values, cancellationToken: cancellationToken);
    }
}
