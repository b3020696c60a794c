using System.Security.Cryptography;
using GaitSeat.Model;
using Microsoft.Extensions.Time.Testing;

namespace GaitSeat.Store.Tests;

public sealed class CompactTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static readonly string[] Riders = ["R07", "R08"];

    /// <summary>Six clips of two riders, one set aside without a row in the sheet.</summary>
    private async Task<Dataset> MadeAsync()
    {
        var dataset = Dataset.Open(_folder.Path);
        for (var i = 0; i < 6; i++) await dataset.WriteAsync(Clip(i), withTracks: true, CancellationToken.None);
        await dataset.WriteAsync(Made.SetAside(Key('f')), withTracks: true, CancellationToken.None);
        return dataset;
    }

    private static string Key(char digit) => new(digit, 64);

    private static ClipRecord Clip(int i, double stature = 171.5) => Made.Measured(Key((char)('0' + i)), session: Made.Session(stature: stature) with { Rider = Riders[i % 2], SessionDate = new(2026, 5, 1 + i) });

    private CompactSummary Compact() => Compactor.Run(_folder.Path, TimeProvider.System, CancellationToken.None);

    [Fact]
    public async Task Compacted_EveryTableHoldsTheSameRows()
    {
        await MadeAsync();
        var before = TableList.All.ToDictionary(t => t.Name, Rows);
        var summary = Compact();
        Assert.Empty(summary.Problems);
        // Without the clips' files nothing but the parts can be read.
        foreach (var table in TableList.All)
        {
            foreach (var file in Directory.GetFiles(Path.Combine(_folder.Path, table.Name))) File.Move(file, file + ".away");
        }

        foreach (var table in TableList.All) SetFolderTime(table.Name);
        foreach (var table in TableList.All)
        {
            Assert.Equal(before[table.Name], Rows(table));
            Assert.Equal(before[table.Name].Count, summary.Rows[table.Name]);
        }

        // 18 strides of 6 clips, 7 clips: the comparison is not one of nothing with nothing.
        Assert.Equal((18, 7), (before["strides"].Count, before["clips"].Count));
    }

    [Fact]
    public async Task Parts_LieBySeasonAndRider()
    {
        await MadeAsync();
        Compact();
        var parts = Directory.EnumerateFiles(Path.Combine(_folder.Path, "compact", "strides"), "*.parquet", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(_folder.Path, f).Replace('\\', '/'));
        Assert.Equal(
            ["compact/strides/season=2026/rider=R07/strides.parquet", "compact/strides/season=2026/rider=R08/strides.parquet", "compact/strides/season=__HIVE_DEFAULT_PARTITION__/rider=__HIVE_DEFAULT_PARTITION__/strides.parquet"],
            parts.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task CompactedAgain_NoPartIsTouched()
    {
        await MadeAsync();
        var first = Compact();
        var hashes = Hashes("*.parquet");
        var second = Compact();
        Assert.True(first.Written > 10);
        Assert.Equal((0, first.Written), (second.Written, second.Kept));
        Assert.Equal(hashes, Hashes("*.parquet"));
    }

    [Fact]
    public async Task SameSources_GiveTheSameBytes()
    {
        await MadeAsync();
        Compact();
        var hashes = Hashes("*.parquet");
        Directory.Delete(Path.Combine(_folder.Path, "compact"), recursive: true);
        Compact();
        Assert.Equal(hashes, Hashes("*.parquet"));
    }

    [Fact]
    public async Task ClipAddedAfterwards_IsSeenBesideTheParts_AndOnlyItsRiderIsWrittenAgain()
    {
        var dataset = await MadeAsync();
        Compact();
        await dataset.WriteAsync(Made.Measured(Key('9'), session: Made.Session() with { Rider = "R08" }), withTracks: false, CancellationToken.None);
        Assert.Equal(21, Count("strides"));
        Assert.Equal(8, Count("clips"));
        var hashes = Hashes("strides.parquet");
        var summary = Compact();
        // Spells, strides, changes, findings, skipped and clips of one rider; the new clip has no tracks.
        Assert.Equal(6, summary.Written);
        Assert.Equal([false, true, true], Hashes("strides.parquet").OrderBy(h => h.Key.Contains("R08", StringComparison.Ordinal) ? 0 : 1).Select(h => hashes[h.Key] == h.Value));
        Assert.Equal(21, Count("strides"));
    }

    /// <summary>A corrected stature makes other centimetres under the same file name: the old ones must not be read from the part.</summary>
    [Fact]
    public async Task ClipReplacedAfterwards_ItsOldRowsAreNotRead()
    {
        var dataset = await MadeAsync();
        Compact();
        await dataset.WriteAsync(Clip(0, stature: 150), withTracks: true, CancellationToken.None);
        Assert.Equal([150.0, 171.5], Query("SELECT DISTINCT rider_stature_cm AS s FROM clips WHERE s IS NOT NULL ORDER BY s").Select(r => r["s"]));
        Assert.Equal(7, Count("clips"));
        Compact();
        Assert.Equal([150.0, 171.5], Query("SELECT DISTINCT rider_stature_cm AS s FROM clips WHERE s IS NOT NULL ORDER BY s").Select(r => r["s"]));
        Assert.Equal(7, Count("clips"));
    }

    [Fact]
    public async Task CompactedClips_StayDone()
    {
        var dataset = await MadeAsync();
        Compact();
        Assert.True(dataset.IsDone(Key('0'), "pipe1", "model1", Clip(0).Session, withTracks: true));
    }

    [Fact]
    public async Task ErasedClip_IsInNoFileOfTheCompactedCopy()
    {
        var dataset = await MadeAsync();
        await dataset.WriteSessionsAsync([new(new(new(2026, 5, 1), "R07", "H3"), [Key('0')], "pipe1", "model1", "test", [])], "pipe1", "model1", CancellationToken.None);
        Compact();
        Assert.True(dataset.Erase(Key('0')) > 7);
        Assert.Empty(FilesThatName(Key('0')));
        Assert.Equal(15, Count("strides"));
        Assert.Equal(["R08"], Directory.GetDirectories(Path.Combine(_folder.Path, "compact", "clips", "season=2026")).Select(d => d.Split('=')[^1]));
        Compact();
        Assert.Empty(FilesThatName(Key('0')));
        Assert.Equal(15, Count("strides"));
    }

    [Fact]
    public async Task LastClipOfARiderErased_HerFolderGoesToo()
    {
        var dataset = await MadeAsync();
        Compact();
        foreach (var i in new[] { 0, 2, 4 }) dataset.Erase(Key((char)('0' + i)));
        Compact();
        Assert.DoesNotContain(Directory.EnumerateFileSystemEntries(_folder.Path, "*", SearchOption.AllDirectories), p => p.Contains("R07", StringComparison.Ordinal));
    }

    [Fact]
    public async Task PartCutShort_IsPassedOverAndWrittenAgain()
    {
        await MadeAsync();
        Compact();
        var part = Path.Combine(_folder.Path, "compact", "strides", "season=2026", "rider=R07", "strides.parquet");
        await File.WriteAllBytesAsync(part, (await File.ReadAllBytesAsync(part))[..100]);
        Assert.Equal(18, Count("strides"));
        Assert.Equal(1, Compact().Written);
        Assert.True(new FileInfo(part).Length > 1000);
    }

    [Fact]
    public async Task SourceDamaged_ThatPartIsNamedAndTheRestIsCompacted()
    {
        var dataset = await MadeAsync();
        var bad = dataset.FilesOf("strides").Single(f => Path.GetFileName(f).StartsWith("0000", StringComparison.Ordinal));
        var bytes = await File.ReadAllBytesAsync(bad);
        Array.Fill(bytes, (byte)0xFF, 100, 2000);
        await File.WriteAllBytesAsync(bad, bytes);
        var summary = Compact();
        var problem = Assert.Single(summary.Problems);
        Assert.Contains(Path.GetFileName(bad), problem, StringComparison.Ordinal);
        Assert.Contains("rider=R07", problem, StringComparison.Ordinal);
        Assert.Equal(9, summary.Rows["strides"]);
    }

    [Theory]
    [InlineData("R 0/7=x", "2026 spring")]
    [InlineData("süd.ß", "..")]
    [InlineData("100%", "winter [2026]")]
    [InlineData("it's", "a*b?")]
    public async Task OddNames_ComeBackAsTheyWere(string rider, string season)
    {
        var dataset = Dataset.Open(_folder.File("what's [this]"));
        await dataset.WriteAsync(Made.Measured(session: Made.Session() with { Rider = rider, Season = season }), withTracks: false, CancellationToken.None);
        Assert.Empty(Compactor.Run(dataset.Folder, TimeProvider.System, CancellationToken.None).Problems);
        Assert.Single(Directory.GetFiles(Path.Combine(dataset.Folder, "compact", "strides"), "*.parquet", SearchOption.AllDirectories));
        using var query = new DatasetQuery(dataset.Folder);
        var row = Assert.Single(query.Query("SELECT rider, season, count(*) AS n FROM strides GROUP BY ALL"));
        Assert.Equal((rider, season, 3L), ((string)row["rider"]!, (string)row["season"]!, (long)row["n"]!));
    }

    /// <summary>The quick look: a folder that did not change since needs no look at its files. Just after writing it tells nothing yet.</summary>
    [Fact]
    public async Task FolderTime_CountsOnlyOnceItIsOlderThanTheClocksGrain()
    {
        await MadeAsync();
        var time = new FakeTimeProvider(new DateTimeOffset(Directory.GetLastWriteTimeUtc(Path.Combine(_folder.Path, "strides")), TimeSpan.Zero).AddSeconds(1));
        Compactor.Run(_folder.Path, time, CancellationToken.None);
        Assert.Null(CompactManifest.Read(_folder.Path, "strides")!.FolderTicks);
        time.Advance(TimeSpan.FromMinutes(1));
        Compactor.Run(_folder.Path, time, CancellationToken.None);
        Assert.NotNull(CompactManifest.Read(_folder.Path, "strides")!.FolderTicks);
        Assert.Equal(18, Count("strides"));
    }

    [Fact]
    public async Task AnotherRunCompacts_SaysSo()
    {
        await MadeAsync();
        Directory.CreateDirectory(Path.Combine(_folder.Path, "compact"));
        await using var held = new FileStream(Path.Combine(_folder.Path, "compact", "_lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        Assert.Contains("Another run", Assert.Throws<DatasetException>(Compact).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NoDataset_SaysSo() => Assert.Contains("no dataset", Assert.Throws<DatasetException>(() => Compactor.Run(_folder.File("none"), TimeProvider.System, CancellationToken.None)).Message, StringComparison.Ordinal);

    public void Dispose() => _folder.Dispose();

    private void SetFolderTime(string table)
    {
        if (CompactManifest.Read(_folder.Path, table) is not { } manifest) return;
        (manifest with { FolderTicks = Directory.GetLastWriteTimeUtc(Path.Combine(_folder.Path, table)).Ticks }).Write(_folder.Path, table);
    }

    private List<string> Rows(TableInfo table) =>
        [.. Query($"SELECT * FROM {table.Name}").Select(r => string.Join('|', table.Columns.Select(c => Convert.ToString(r[c.Name], System.Globalization.CultureInfo.InvariantCulture)))).Order(StringComparer.Ordinal)];

    private long Count(string table) => (long)Query($"SELECT count(*) AS n FROM {table}")[0]["n"]!;

    private IReadOnlyList<IReadOnlyDictionary<string, object?>> Query(string sql)
    {
        using var query = new DatasetQuery(_folder.Path);
        return query.Query(sql);
    }

    /// <summary>Files that name the clip or hold a row of it; parts are compressed, so they are read and not searched.</summary>
    private List<string> FilesThatName(string key)
    {
        using var engine = Engine.Open();
        return [.. Directory.EnumerateFiles(_folder.Path, "*", SearchOption.AllDirectories).Where(f => f.EndsWith(".parquet", StringComparison.Ordinal)
            ? (long)engine.Scalar($"SELECT count(*) FROM read_parquet({SqlText.Files([f])}) t WHERE strpos(t::VARCHAR, '{key}') > 0")! > 0
            : File.ReadAllText(f).Contains(key[..16], StringComparison.Ordinal))];
    }

    private Dictionary<string, string> Hashes(string pattern = "*") =>
        Directory.EnumerateFiles(Path.Combine(_folder.Path, "compact"), pattern, SearchOption.AllDirectories)
            .ToDictionary(f => Path.GetRelativePath(_folder.Path, f), f => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f))));
}
