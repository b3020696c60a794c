using ParquetSharp;

namespace GaitSeat.Store.Tests;

/// <summary>The files are opened by Apache Arrow's C++ reader, which had no part in writing them: Parquet.Net writes the clips' files, DuckDB the compacted ones.</summary>
public sealed class SecondReaderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Strides_ReadTheSameThroughArrow(bool compacted)
    {
        using var reader = new ParquetFileReader(await FileOfAsync("strides", compacted));
        Assert.Equal(3, reader.FileMetaData.NumRows);
        using var group = reader.RowGroup(0);
        Assert.Equal([48, 50, null], Column<double?>(reader, group, "thigh_angle_sit_deg"));
        Assert.Equal([1, 2, 4], Column<int>(reader, group, "stride", compacted));
        Assert.Equal(["H3", "H3", "H3"], Column<string?>(reader, group, "horse"));
        Assert.Equal([new Date(2026, 5, 31)], Column<Date?>(reader, group, "session_date").Distinct().Select(d => d!.Value));
    }

    [Theory]
    [InlineData(false, Compression.Snappy)]
    [InlineData(true, Compression.Zstd)]
    public async Task EveryColumn_IsCompressedAndCarriesStatistics(bool compacted, Compression compression)
    {
        using var reader = new ParquetFileReader(await FileOfAsync("strides", compacted));
        using var group = reader.RowGroup(0);
        for (var i = 0; i < reader.FileMetaData.Schema.NumColumns; i++)
        {
            using var chunk = group.MetaData.GetColumnChunkMetaData(i);
            Assert.Equal(compression, chunk.Compression);
            Assert.True(chunk.IsStatsSet, reader.FileMetaData.Schema.Column(i).Name);
        }

        using var thigh = group.MetaData.GetColumnChunkMetaData(IndexOf(reader, "thigh_angle_sit_deg"));
        var statistics = Assert.IsType<Statistics<double>>(thigh.Statistics);
        Assert.Equal((48.0, 50.0, 1L), (statistics.Min, statistics.Max, statistics.NullCount));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task EveryTable_HasTheColumnsOfTheDictionary(bool compacted)
    {
        foreach (var table in TableList.All.Where(t => t.Name is not ("sessions" or "flags" or "verdicts" or "marks")))
        {
            using var reader = new ParquetFileReader(await FileOfAsync(table.Name, compacted));
            var wanted = table.Columns.Where(c => !compacted || c.Name is not ("season" or "rider"));
            var schema = reader.FileMetaData.Schema;
            Assert.Equal(wanted.Select(c => $"{c.Name} {PhysicalOf(c.Type)}"), Enumerable.Range(0, schema.NumColumns).Select(i => $"{schema.Column(i).Name} {schema.Column(i).PhysicalType}"));
        }
    }

    [Fact]
    public async Task Compacted_SaysWhichTableAndLayoutItIs()
    {
        using var reader = new ParquetFileReader(await FileOfAsync("strides", compacted: true));
        Assert.Equal("strides", reader.FileMetaData.KeyValueMetadata["gaitseat_table"]);
        Assert.Equal("1", reader.FileMetaData.KeyValueMetadata["gaitseat_schema_version"]);
    }

    public void Dispose() => _folder.Dispose();

    private async Task<string> FileOfAsync(string table, bool compacted)
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        if (!compacted) return Directory.GetFiles(Path.Combine(_folder.Path, table)).Single();
        Assert.Empty(Compactor.Run(_folder.Path, TimeProvider.System, CancellationToken.None).Problems);
        return Directory.GetFiles(Path.Combine(_folder.Path, "compact", table), "*.parquet", SearchOption.AllDirectories).Single();
    }

    private static int IndexOf(ParquetFileReader reader, string column) =>
        Enumerable.Range(0, reader.FileMetaData.Schema.NumColumns).Single(i => reader.FileMetaData.Schema.Column(i).Name == column);

    private static T[] Column<T>(ParquetFileReader reader, RowGroupReader group, string column)
    {
        using var values = group.Column(IndexOf(reader, column)).LogicalReader<T>();
        return values.ReadAll((int)group.MetaData.NumRows);
    }

    /// <summary>DuckDB writes no column as required, so whole numbers come back as optional ones.</summary>
    private static int[] Column<T>(ParquetFileReader reader, RowGroupReader group, string column, bool optional) =>
        optional ? [.. Column<int?>(reader, group, column).Select(v => v!.Value)] : Column<int>(reader, group, column);

    private static PhysicalType PhysicalOf(ColumnType type) => type switch
    {
        ColumnType.Text => PhysicalType.ByteArray,
        ColumnType.Real => PhysicalType.Double,
        _ => PhysicalType.Int32,
    };
}
