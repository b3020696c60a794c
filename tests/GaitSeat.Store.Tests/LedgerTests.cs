using System.Security.Cryptography;
using CsCheck;

namespace GaitSeat.Store.Tests;

public sealed class LedgerTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task ClipWritten_IsDoneUnderItsHashesOnly()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        Assert.True(dataset.IsDone(Made.KeyA, "pipe1", "model1"));
        Assert.False(dataset.IsDone(Made.KeyB, "pipe1", "model1"));
        Assert.False(dataset.IsDone(Made.KeyA, "pipe2", "model1"));
        Assert.False(dataset.IsDone(Made.KeyA, "pipe1", "model2"));
    }

    [Fact]
    public async Task OldAndNewSettings_LiveSideBySide()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        var before = Hashes();
        await dataset.WriteAsync(Made.Measured(pipeline: "pipe2"), withTracks: false, CancellationToken.None);
        Assert.Equal(["pipe1", "pipe2"], dataset.Clips().Select(c => c.PipelineHash));
        Assert.Equal(2, dataset.FilesOf("strides").Count);
        Assert.All(before, b => Assert.Equal(b.Value, Hashes()[b.Key]));
    }

    [Fact]
    public async Task WritingTwice_GivesTheSameBytes()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        var first = Hashes();
        await dataset.WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        Assert.Equal(7, first.Count);
        Assert.Equal(first, Hashes());
    }

    [Theory]
    [InlineData("spells")]
    [InlineData("strides")]
    [InlineData("changes")]
    [InlineData("findings")]
    [InlineData("skipped")]
    [InlineData("clips")]
    public async Task FileLost_ClipIsUndoneAndRunningAgainRepairsIt(string table)
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        var whole = Hashes();
        File.Delete(Assert.Single(dataset.FilesOf(table)));
        Assert.False(dataset.IsDone(Made.KeyA, "pipe1", "model1"));
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        Assert.True(dataset.IsDone(Made.KeyA, "pipe1", "model1"));
        Assert.Equal(whole, Hashes());
    }

    /// <summary>The run is torn off at any table, as by a pulled plug: what is there is whole, the clip is not done, the next run repairs.</summary>
    [Theory]
    [InlineData("tracks")]
    [InlineData("spells")]
    [InlineData("strides")]
    [InlineData("changes")]
    [InlineData("findings")]
    [InlineData("skipped")]
    [InlineData("clips")]
    public async Task TornBetweenTables_ClipIsUndoneAndNextRunRepairs(string tornAt)
    {
        var dataset = Dataset.Open(_folder.Path);
        // A folder stands where the file should go: the rename fails, as the last thing the run does.
        var name = RunName.Of(Made.KeyA, "pipe1", "model1");
        var obstacle = Path.Combine(_folder.Path, tornAt, name);
        Directory.CreateDirectory(Path.Combine(obstacle, "full"));
        await Assert.ThrowsAsync<DatasetException>(() => dataset.WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None));
        Directory.Delete(obstacle, recursive: true);
        Assert.False(dataset.IsDone(Made.KeyA, "pipe1", "model1"));
        Assert.Empty(dataset.Clips());

        await dataset.WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        Assert.True(dataset.IsDone(Made.KeyA, "pipe1", "model1"));
        Assert.Single(dataset.Clips());
        Assert.Equal(7, Hashes().Count);
    }

    [Fact]
    public async Task CancelledBeforeTheEnd_LeavesTheClipUndoneAndNoTemporaryFile()
    {
        var dataset = Dataset.Open(_folder.Path);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => dataset.WriteAsync(Made.Measured(), true, new(canceled: true)));
        Assert.False(dataset.IsDone(Made.KeyA, "pipe1", "model1"));
        Assert.DoesNotContain(Hashes().Keys, k => k.EndsWith(".tmp", StringComparison.Ordinal));
    }

    [Fact]
    public async Task TwoWorkersOnOneClip_LeaveOneWholeClip()
    {
        var one = Dataset.Open(_folder.Path);
        var two = Dataset.Open(_folder.Path);
        for (var round = 0; round < 5; round++)
        {
            await Task.WhenAll(
                Task.Run(() => one.WriteAsync(Made.Measured(), true, CancellationToken.None)),
                Task.Run(() => two.WriteAsync(Made.Measured(), true, CancellationToken.None)));
            Assert.True(one.IsDone(Made.KeyA, "pipe1", "model1"));
            Assert.Equal(7, Hashes().Count);
        }

        Assert.Equal(3, Assert.Single(one.Clips()).Strides);
    }

    [Fact]
    public async Task CleanLeftovers_TakesTornFilesAndSparesThoseInUse()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        var torn = Path.Combine(_folder.Path, "strides", "x.parquet.0.tmp");
        var used = Path.Combine(_folder.Path, "strides", "x.parquet.1.tmp");
        await File.WriteAllTextAsync(torn, "half", CancellationToken.None);
        await using var open = new FileStream(used, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Delete);
        dataset.CleanLeftovers();
        Assert.False(File.Exists(torn));
        Assert.True(File.Exists(used));
        Assert.True(dataset.IsDone(Made.KeyA, "pipe1", "model1"));
    }

    [Fact]
    public async Task SheetRowChanged_ClipIsMeasuredAgainAndReplaced()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        Assert.True(dataset.IsDone(Made.KeyA, "pipe1", "model1", Made.Session() with { ClipFile = "renamed.mp4" }, withTracks: false));
        Assert.False(dataset.IsDone(Made.KeyA, "pipe1", "model1", Made.Session(stature: 165), withTracks: false));
        Assert.False(dataset.IsDone(Made.KeyA, "pipe1", "model1", session: null, withTracks: false));
        await dataset.WriteAsync(Made.Measured(session: Made.Session(stature: 165)), withTracks: false, CancellationToken.None);
        Assert.True(dataset.IsDone(Made.KeyA, "pipe1", "model1", Made.Session(stature: 165), withTracks: false));
        Assert.Single(dataset.Clips());
    }

    [Fact]
    public async Task TracksAskedForLater_ClipIsUndoneUntilTheyAreThere()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        Assert.Empty(dataset.FilesOf("tracks"));
        Assert.False(dataset.IsDone(Made.KeyA, "pipe1", "model1", Made.Session(), withTracks: true));
        await dataset.WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        Assert.True(dataset.IsDone(Made.KeyA, "pipe1", "model1", Made.Session(), withTracks: true));
    }

    [Fact]
    public async Task ClipsFileDamaged_ClipIsUndoneAndReadingSaysWhichFile()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        var path = Assert.Single(dataset.FilesOf("clips"));
        await File.WriteAllBytesAsync(path, (await File.ReadAllBytesAsync(path))[..200]);
        Assert.False(dataset.IsDone(Made.KeyA, "pipe1", "model1", Made.Session(), withTracks: false));
        var error = Assert.Throws<DatasetException>(dataset.Clips);
        Assert.Contains(Path.GetFileName(path), error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FolderThatIsAFile_GivesAClearError()
    {
        var path = _folder.File("not-a-folder");
        File.WriteAllText(path, "");
        var error = Assert.Throws<DatasetException>(() => Dataset.Open(path));
        Assert.Contains(path, error.Message, StringComparison.Ordinal);
        Assert.Contains("may write to", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OpeningAFolder_LeavesNoFilesInIt()
    {
        Dataset.Open(_folder.Path);
        Assert.Empty(Hashes());
    }

    [Fact]
    public void TableUnknown_SaysWhichThereAre()
    {
        var error = Assert.Throws<ArgumentException>(() => Dataset.Open(_folder.Path).FilesOf("stride"));
        Assert.Contains("strides", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("abc")]
    [InlineData("../../../../etc/passwd")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    public void KeyThatIsNoHash_IsRefused(string key) =>
        Assert.Throws<ArgumentException>(() => Dataset.Open(_folder.Path).IsDone(key, "p", "m"));

    /// <summary>The two hashes of a run's name must not run into each other: the same letters cut elsewhere are another name.</summary>
    [Fact]
    public void RunNames_DifferWhereverTheHashesDiffer() =>
        Gen.Select(Gen.String[Gen.Char.AlphaNumeric, 4, 12], Gen.Int[1, 3], Gen.Int[1, 3]).Sample(
            (s, i, j) => (i == j) == (RunName.Of(Made.KeyA, s[..i], s[i..]) == RunName.Of(Made.KeyA, s[..j], s[j..])),
            seed: "0000KH3TwKS3",
            iter: 1000);

    public void Dispose() => _folder.Dispose();

    private Dictionary<string, string> Hashes() =>
        Directory.EnumerateFiles(_folder.Path, "*", SearchOption.AllDirectories)
            .ToDictionary(f => Path.GetRelativePath(_folder.Path, f), f => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f))));
}
