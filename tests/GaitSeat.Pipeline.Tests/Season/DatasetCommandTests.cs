using GaitSeat.Cli;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Season;

/// <summary>compact, query and export as a user calls them: output, exit codes, and what is said when they are called wrongly.</summary>
public sealed class DatasetCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-datacmd-").FullName;
    private readonly string _dataset;

    public DatasetCommandTests() => _dataset = Dataset.Open(Path.Combine(_folder, "dataset")).Folder;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Query_PrintsATable()
    {
        var (code, output, _) = await RunAsync("query", "select 1 as a, 'x' as b, null as c, 0.123456 as d", "--dataset", _dataset);
        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal(["a  b     c       d", "-  -  ----  ------", "1  x  null  0.1235", "(1 row)"], output.ReplaceLineEndings("\n").TrimEnd().Split('\n'));
    }

    [Fact]
    public async Task Query_ByNameAndAsCsv()
    {
        var (code, output, _) = await RunAsync("query", "strides-by-rider-and-length", "--dataset", _dataset, "--as", "csv");
        Assert.Equal(ExitCodes.Done, code);
        Assert.StartsWith("rider,leather_cm,stirrup_hole,strides,", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Query_WritesTheFileAndNothingBeside()
    {
        var file = Path.Combine(_folder, "answer.parquet");
        Assert.Equal(ExitCodes.Done, (await RunAsync("query", "select 1 as a", "--dataset", _dataset, "--as", "parquet", "--out", file)).Code);
        Assert.Equal("PAR1"u8, File.ReadAllBytes(file).AsSpan(0, 4));
        Assert.Equal([file], Directory.GetFiles(_folder));
    }

    [Fact]
    public async Task List_ShowsEveryReadyQuestion()
    {
        var (code, output, _) = await RunAsync("query", "--list");
        Assert.Equal(ExitCodes.Done, code);
        Assert.All(ReadyQuestions.All, q => Assert.Contains(q.Name, output, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("select nope from strides", "nope")]
    [InlineData("selec 1", "syntax error")]
    [InlineData("drop view strides", "reads")]
    public async Task Query_WrongSql_IsSaidWithItsCode(string sql, string says)
    {
        var (code, output, error) = await RunAsync("query", sql, "--dataset", _dataset);
        Assert.Equal((ExitCodes.WrongUsage, ""), (code, output));
        Assert.Contains(says, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--dataset", "query", "select 1")]
    [InlineData("--list", "query", "--dataset", "d")]
    [InlineData("--out", "query", "select 1", "--dataset", "d", "--as", "parquet")]
    [InlineData("csv", "query", "select 1", "--dataset", "d", "--as", "xlsx")]
    [InlineData("c3d", "export", "fbx", "--dataset", "d", "--out", "o")]
    [InlineData("no dataset", "compact", "--dataset", "not-there")]
    [InlineData("no dataset", "query", "select 1", "--dataset", "not-there")]
    [InlineData("no dataset", "export", "csv", "--dataset", "not-there", "--out", "o")]
    public async Task WrongUsage_SaysWhatIsAllowed(string says, params string[] args)
    {
        var (code, _, error) = await RunAsync(args);
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains(says, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task DamagedFile_IsNamed()
    {
        var bad = Path.Combine(_dataset, "strides", "0000000000000000-000000000000.parquet");
        await File.WriteAllTextAsync(bad, "no Parquet");
        var (code, _, error) = await RunAsync("query", "select count(*) from strides", "--dataset", _dataset);
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains(Path.GetFileName(bad), error.ReplaceLineEndings(""), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Compact_OfAnEmptyDataset_DescribesNothingWithoutFail()
    {
        var (code, output, _) = await RunAsync("compact", "--dataset", _dataset, "--title", "Nothing yet");
        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("0 parts written", output, StringComparison.Ordinal);
        Assert.StartsWith("# Nothing yet", await File.ReadAllTextAsync(Path.Combine(_dataset, "compact", "README.md")), StringComparison.Ordinal);
    }

    /// <summary>What was asked and where it went; what failed was not handed out.</summary>
    [Fact]
    public async Task QueryAndCompact_AreInTheAuditLog()
    {
        var file = Path.Combine(_folder, "answer.csv");
        await RunAsync("query", "select 1 as a", "--dataset", _dataset, "--by", "C2");
        await RunAsync("query", "runs", "--dataset", _dataset, "--as", "csv", "--out", file);
        await RunAsync("query", "select nothing", "--dataset", _dataset);
        await RunAsync("compact", "--dataset", _dataset);
        Assert.Equal(
            [("C2", "queried", "select 1 as a", null), ("coach", "queried", "runs", file), ("coach", "compacted", "all tables", Path.Combine(_dataset, "compact"))],
            new AuditLog(_dataset).Read().Select(e => (e.Who, e.Act, e.What, e.Where)));
    }

    private static Task<(int Code, string Out, string Error)> RunAsync(params string[] args) => SeasonFolder.RunAsync(CancellationToken.None, args);
}
