namespace GaitSeat.Store.Tests;

public sealed class DatasetQueryTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public void EmptyDataset_HasEveryViewWithItsColumnsAndTypes()
    {
        Dataset.Open(_folder.Path);
        using var query = new DatasetQuery(_folder.Path);
        foreach (var table in TableList.All)
        {
            Assert.Empty(query.Query($"SELECT * FROM {table.Name}"));
            var found = query.Query($"DESCRIBE {table.Name}").Select(r => $"{r["column_name"]} {r["column_type"]}");
            Assert.Equal(table.Columns.Select(c => $"{c.Name} {DuckDbTypes.Of(c.Type)}"), found);
        }
    }

    [Theory]
    [InlineData("plain")]
    [InlineData("winter [2026]")]
    [InlineData("rider's clips")]
    [InlineData("süd ß 馬")]
    [InlineData("what* is? this")]
    public async Task FolderNameWithSignsOfAPattern_IsReadAllTheSame(string name)
    {
        if (OperatingSystem.IsWindows() && name.AsSpan().ContainsAny("*?")) Assert.Skip("Windows has no such file names.");
        var dataset = Dataset.Open(_folder.File(name));
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        await dataset.WriteAsync(Made.SetAside(), withTracks: false, CancellationToken.None);
        Assert.Equal(["clip-a.mp4", "clip-b.mp4"], dataset.Clips().Select(c => c.ClipFile));
    }

    [Fact]
    public void FolderNotThere_SaysSo() =>
        Assert.Contains("no dataset folder", Assert.Throws<DatasetException>(() => new DatasetQuery(_folder.File("none"))).Message, StringComparison.Ordinal);

    [Fact]
    public void StatementWrong_SaysWhatIsWrong()
    {
        using var query = new DatasetQuery(_folder.Path);
        Assert.Contains("no_such_column", Assert.Throws<DatasetException>(() => query.Query("SELECT no_such_column FROM strides")).Message, StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Dispose();
}
