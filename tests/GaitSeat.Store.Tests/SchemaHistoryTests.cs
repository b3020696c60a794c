using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

/// <summary>
/// Layouts of other versions, made from files of the present one: an older layout called the stirrup length <c>leather_mm</c>, in millimetres, and had no rein.
/// </summary>
public sealed class SchemaHistoryTests : IDisposable
{
    private static readonly SchemaStep MillimetresToCentimetres = new(
        1,
        [new("strides", "leather_cm", "leather_mm / 10"), new("strides", "rein", "NULL")],
        [("strides", "leather_mm")],
        MeasureAnew: false);

    private static readonly SchemaHistory Next = new(2, [MillimetresToCentimetres]);

    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task OlderFile_IsReadInThePresentLayout()
    {
        await WriteOlderAsync(Made.KeyA);
        var rows = Query(Next, "SELECT leather_cm, rein, schema_version, thigh_angle_sit_deg FROM strides ORDER BY stride");
        Assert.Equal([62.5, 62.5, 62.5], rows.Select(r => r["leather_cm"]));
        Assert.All(rows, r => Assert.Equal((null, 1), (r["rein"], r["schema_version"])));
        Assert.Equal(48.0, rows[0]["thigh_angle_sit_deg"]);
    }

    [Fact]
    public async Task OlderAndPresentFiles_AreReadTogether()
    {
        await WriteOlderAsync(Made.KeyA);
        await WritePresentAsync(Made.KeyB);
        var rows = Query(Next, "SELECT schema_version AS v, any_value(leather_cm) AS leather, any_value(rein) AS rein, count(*) AS n FROM strides GROUP BY v ORDER BY v");
        Assert.Equal([(1, 62.5, null, 3L), (2, 62.5, "left", 3L)], rows.Select(r => ((int)r["v"]!, (double)r["leather"]!, (string?)r["rein"], (long)r["n"]!)));
    }

    [Fact]
    public async Task Compacted_EveryRowIsInThePresentLayout()
    {
        await WriteOlderAsync(Made.KeyA);
        await WritePresentAsync(Made.KeyB);
        var summary = Compactor.Run(_folder.Path, TimeProvider.System, Next, CancellationToken.None);
        Assert.Empty(summary.Problems);
        using var engine = Engine.Open();
        var part = Assert.Single(Directory.GetFiles(Path.Combine(_folder.Path, "compact", "strides"), "*.parquet", SearchOption.AllDirectories));
        var found = engine.Run($"SELECT DISTINCT schema_version, leather_cm FROM read_parquet({SqlText.Files([part])})", c =>
        {
            using var reader = c.ExecuteReader();
            var rows = new List<(int, double)>();
            while (reader.Read()) rows.Add((reader.GetInt32(0), reader.GetDouble(1)));
            return rows;
        });
        Assert.Equal([(2, 62.5)], found);
        Assert.Equal(6L, Query(Next, "SELECT count(*) AS n FROM strides")[0]["n"]);
    }

    [Fact]
    public async Task NewerRows_AreRefusedWithBothVersions()
    {
        await WritePresentAsync(Made.KeyA);
        await WriteOlderAsync(Made.KeyB);
        var error = Assert.Throws<DatasetException>(() => Query(SchemaHistory.Ours, "SELECT count(*) FROM strides"));
        Assert.Contains("schema version 2", error.Message, StringComparison.Ordinal);
        Assert.Contains("knows up to 1", error.Message, StringComparison.Ordinal);
        Assert.Contains("later one", error.Message, StringComparison.Ordinal);
    }

    /// <summary>Only what is asked for is judged: a table without newer rows can be read.</summary>
    [Fact]
    public async Task NewerRows_DoNotSpoilOtherTables()
    {
        await WritePresentAsync(Made.KeyA);
        Assert.Equal(2L, Query(SchemaHistory.Ours, "SELECT count(*) AS n FROM spells")[0]["n"]);
    }

    [Theory]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public async Task ClipOfAnOlderLayout_IsDoneUnlessItsNumbersAreWrong(bool measureAnew, bool done)
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        var dataset = Dataset.Open(_folder.Path, new(2, [MillimetresToCentimetres with { MeasureAnew = measureAnew }]));
        Assert.Equal(done, dataset.IsDone(Made.KeyA, "pipe1", "model1"));
        Assert.Equal(done, dataset.IsDone(Made.KeyA, "pipe1", "model1", Made.Session(), withTracks: false));
    }

    [Fact]
    public async Task ClipMeasuredAgain_ItsOlderFilesGo()
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        var dataset = Dataset.Open(_folder.Path, new(2, [MillimetresToCentimetres with { MeasureAnew = true }]));
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        Assert.Single(dataset.FilesOf("strides"));
        Assert.True(dataset.IsDone(Made.KeyA, "pipe1", "model1"));
    }

    [Fact]
    public void StepsThatDoNotLeadThere_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => new SchemaHistory(3, [MillimetresToCentimetres]));
        Assert.Throws<ArgumentException>(() => new SchemaHistory(4, [MillimetresToCentimetres, MillimetresToCentimetres with { From = 3 }]));
    }

    [Fact]
    public void Ours_ReachesThePresentVersion() => Assert.Equal(Provenance.CurrentSchemaVersion, SchemaHistory.Ours.Current);

    public void Dispose() => _folder.Dispose();

    private async Task WriteOlderAsync(string key)
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(key), withTracks: false, CancellationToken.None);
        Rewrite(key, "SELECT * EXCLUDE (leather_cm, rein), leather_cm * 10 AS leather_mm FROM");
    }

    private async Task WritePresentAsync(string key)
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(key), withTracks: false, CancellationToken.None);
        Rewrite(key, "SELECT * REPLACE (2::INTEGER AS schema_version) FROM");
    }

    private void Rewrite(string key, string select)
    {
        var path = Directory.GetFiles(Path.Combine(_folder.Path, "strides"), key[..16] + "*").Single();
        using (var engine = Engine.Open()) engine.Execute($"COPY ({select} read_parquet({SqlText.Files([path])}, hive_partitioning = false)) TO {SqlText.Literal(path + ".new")} (FORMAT parquet)");
        File.Move(path + ".new", path, overwrite: true);
    }

    private IReadOnlyList<IReadOnlyDictionary<string, object?>> Query(SchemaHistory history, string sql)
    {
        using var query = new DatasetQuery(_folder.Path, null, history);
        query.Show(_ => true);
        return query.Query(sql);
    }
}
