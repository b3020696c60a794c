using System.Text.Json;
using ParquetSharp;

namespace GaitSeat.Store.Tests;

public sealed class AskedQueryTests : IDisposable
{
    private const string ByStride = "SELECT stride, thigh_angle_sit_deg, session_date, horse FROM strides ORDER BY stride";

    private readonly TemporaryFolder _folder = new();
    private readonly string _dataset;

    public AskedQueryTests()
    {
        _dataset = _folder.File("season [26]");
        var dataset = Dataset.Open(_dataset);
        dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None).GetAwaiter().GetResult();
        dataset.WriteAsync(Made.Measured(pipeline: "other"), withTracks: false, CancellationToken.None).GetAwaiter().GetResult();
    }

    [Fact]
    public void Answer_HasNamesValuesAndNulls()
    {
        var answer = Ask("SELECT stride, thigh_angle_sit_deg, session_date FROM strides WHERE pipeline_hash = 'pipe1' ORDER BY stride -- all of them");
        Assert.Equal(["stride", "thigh_angle_sit_deg", "session_date"], answer.Columns);
        Assert.Equal([[1, 48.0, new DateOnly(2026, 5, 31)], [2, 50.0, new DateOnly(2026, 5, 31)], [4, null, new DateOnly(2026, 5, 31)]], answer.Rows);
        Assert.False(answer.More);
    }

    [Fact]
    public void Rows_AreCutWhereAskedAndItIsSaid()
    {
        using var query = AskedQuery.Open(_dataset, null, null);
        Assert.True(query.Ask(ByStride, 2) is { More: true, Rows.Count: 2 });
        Assert.True(query.Ask(ByStride, 6) is { More: false, Rows.Count: 6 });
    }

    [Fact]
    public void Run_KeepsToOneRun()
    {
        using var query = AskedQuery.Open(_dataset, "PIPE", null);
        Assert.Equal(3L, query.Ask("SELECT count(*) FROM strides", 1).Rows[0][0]);
        using var all = AskedQuery.Open(_dataset, null, null);
        Assert.Equal(6L, all.Ask("SELECT count(*) FROM strides", 1).Rows[0][0]);
        Assert.Equal(2, DatasetRun.CountIn(_dataset));
        Assert.Contains("'f00'", Assert.Throws<DatasetException>(() => AskedQuery.Open(_dataset, "f00", null)).Message, StringComparison.Ordinal);
        Assert.Contains("letters and digits", Assert.Throws<DatasetException>(() => AskedQuery.Open(_dataset, "' OR true --", null)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("COPY strides TO 'x.csv'")]
    [InlineData("CREATE TABLE t AS SELECT 1")]
    [InlineData("DROP VIEW strides")]
    [InlineData("ATTACH 'x.db'")]
    [InlineData("INSTALL httpfs")]
    [InlineData("SET enable_external_access = true")]
    [InlineData("PRAGMA database_list")]
    [InlineData("DELETE FROM strides")]
    [InlineData("SELECT 1; DROP VIEW strides")]
    [InlineData("SELECT 1) TO 'x.csv'; --")]
    public void AnythingButOneQuery_IsRefused(string sql)
    {
        var before = Directory.GetFileSystemEntries(_folder.Path, "*", SearchOption.AllDirectories);
        Assert.Throws<DatasetException>(() => Ask(sql));
        Assert.Throws<DatasetException>(() => Save(sql, AnswerFormat.Csv));
        Assert.Equal(before, Directory.GetFileSystemEntries(_folder.Path, "*", SearchOption.AllDirectories));
        Assert.Equal(6L, Ask("SELECT count(*) FROM strides").Rows[0][0]);
    }

    [Fact]
    public void OtherFilesAndTheNetwork_AreOutOfReach()
    {
        File.WriteAllText(_folder.File("secret.csv"), "a\n1\n");
        foreach (var source in new[] { $"read_csv('{_folder.File("secret.csv")}')", $"read_text('{_folder.File("*")}')", "'https://example.org/x.parquet'", "glob('/*')" })
        {
            var error = Assert.Throws<DatasetException>(() => Ask($"SELECT * FROM {source}"));
            Assert.Contains("reaches no other file", error.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void ColumnUnknown_SaysSoAndOffersOthers()
    {
        var error = Assert.Throws<DatasetException>(() => Ask("SELECT rise_height FROM strides"));
        Assert.Contains("rise_height", error.Message, StringComparison.Ordinal);
        Assert.Contains("rise_height_cm", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("  ;", "there are 0")]
    [InlineData("SELEC 1", "syntax error")]
    [InlineData("SELECT * FROM stride", "stride")]
    public void SqlWrong_SaysWhat(string sql, string says) => Assert.Contains(says, Assert.Throws<DatasetException>(() => Ask(sql)).Message, StringComparison.Ordinal);

    [Fact]
    public void Describe_TellsTheColumns() =>
        Assert.Equal(TableList.All.Single(t => t.Name == "strides").Columns.Select(c => c.Name), Ask("DESCRIBE strides").Rows.Select(r => (string)r[0]!));

    /// <summary>Views are made as a query names them; one that names its table at run time finds it all the same.</summary>
    [Theory]
    [InlineData("SELECT count(*) FROM query_table('str' || 'ides')")]
    [InlineData("SELECT count(*) FROM query('FROM str' || 'ides')")]
    [InlineData("SELECT count(*) FROM \"STRIDES\"")]
    public void TableNamedInAnotherWay_IsFound(string sql) => Assert.Equal(6L, Ask(sql).Rows[0][0]);

    [Fact]
    public void TablesAskedFor_AreAllThere() =>
        Assert.Equal(TableList.All.Select(t => t.Name).Order(), Ask("SELECT table_name FROM information_schema.tables ORDER BY 1").Rows.Select(r => (string)r[0]!));

    [Fact]
    public void Csv_HasAHeaderAndEmptyFieldsForNulls() =>
        Assert.Equal(["stride,thigh_angle_sit_deg,session_date,horse", "1,48.0,2026-05-31,H3"], File.ReadLines(Save(ByStride, AnswerFormat.Csv)).Take(2));

    [Fact]
    public void Json_IsAnArrayOfObjects()
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Save(ByStride, AnswerFormat.Json)));
        Assert.Equal(6, json.RootElement.GetArrayLength());
        Assert.Equal(48.0, json.RootElement[0].GetProperty("thigh_angle_sit_deg").GetDouble());
        Assert.Equal(JsonValueKind.Null, json.RootElement[5].GetProperty("thigh_angle_sit_deg").ValueKind);
    }

    [Fact]
    public void Parquet_IsReadByArrow()
    {
        using var reader = new ParquetFileReader(Save(ByStride, AnswerFormat.Parquet));
        Assert.Equal(6, reader.FileMetaData.NumRows);
        Assert.Equal("thigh_angle_sit_deg", reader.FileMetaData.Schema.Column(1).Name);
    }

    [Theory]
    [InlineData(200)]
    [InlineData(-100)]
    public void FileCutShort_IsNamed(int bytes)
    {
        var path = Damage(all => bytes > 0 ? all[..bytes] : all[..^-bytes]);
        Assert.Contains(path, Assert.Throws<DatasetException>(() => Ask("SELECT count(*) FROM strides")).Message, StringComparison.Ordinal);
    }

    /// <summary>The engine says only that a page does not unpack; the reader must say where.</summary>
    [Fact]
    public void FileDamagedInTheMiddle_IsNamed()
    {
        var path = Damage(all =>
        {
            Array.Fill(all, (byte)0xFF, 100, 4000);
            return all;
        });
        Assert.Contains(path, Assert.Throws<DatasetException>(() => Ask("SELECT * FROM strides")).Message, StringComparison.Ordinal);
    }

    public static TheoryData<string> Names => [.. ReadyQuestions.All.Select(q => q.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void ReadyQuestion_CanBeAskedOfAnyDataset(string name)
    {
        var sql = ReadyQuestions.All.Single(q => q.Name == name).Sql;
        Assert.NotEmpty(Ask(sql).Columns);
        Dataset.Open(_folder.File("empty"));
        using var empty = AskedQuery.Open(_folder.File("empty"), null, null);
        Assert.Empty(empty.Ask(sql, 10).Rows);
    }

    [Fact]
    public void StridesByRiderAndLength_CountsThem()
    {
        using var query = AskedQuery.Open(_dataset, "pipe1", null);
        var answer = query.Ask(ReadyQuestions.All.Single(q => q.Name == "strides-by-rider-and-length").Sql, 10);
        var row = Assert.Single(answer.Rows);
        Assert.Equal(["R07", 62.5, 9.0, 3L, 1L], row.Take(5));
        Assert.Equal(49.0, row[7]);
    }

    public void Dispose() => _folder.Dispose();

    private string Damage(Func<byte[], byte[]> how)
    {
        var path = Dataset.Open(_dataset).FilesOf("strides")[0];
        File.WriteAllBytes(path, how(File.ReadAllBytes(path)));
        return path;
    }

    private Answer Ask(string sql)
    {
        using var query = AskedQuery.Open(_dataset, null, null);
        return query.Ask(sql, 1000);
    }

    private string Save(string sql, AnswerFormat format)
    {
        var file = _folder.File("answer");
        using var query = AskedQuery.Open(_dataset, null, file);
        query.Save(sql, format);
        return file;
    }
}
