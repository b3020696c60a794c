using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class FlagFilesTests : IDisposable
{
    private static readonly DatasetRun Run = new("pipe1", "model1");

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Flags_ReadBackByDuckDb()
    {
        await Write(Dataset.Open(_folder.Path), Model(Made.KeyA), Model(Made.KeyA) with { Fault = Fault.ForcedHeel, Probability = 0.1, IsFloor = true }, Rule(Made.KeyB));

        var rows = Query("SELECT * FROM flags ORDER BY clip_key, flagged_by");
        Assert.Equal(["model", "rule_floor", "rule"], rows.Select(r => r["flagged_by"]));
        Assert.Equal(["chair_seat", "forced_heel", "chair_seat"], rows.Select(r => r["fault"]));
        Assert.Equal("thigh 56 ± 2 deg at the sit; rise 9 ± 1 cm", rows[0]["drivers"]);
        Assert.Equal((0.87, null, null, "classifier1"), (rows[0]["probability"], rows[0]["rule_probability"], rows[0]["rule_summary"], rows[0]["classifier_hash"]));
        Assert.Equal((0.9, "Foot far ahead.", null), (rows[2]["rule_probability"], rows[2]["rule_summary"], rows[2]["classifier_hash"]));
        Assert.Equal((new DateOnly(2026, 5, 31), "R07", 2, 3.5, 8.5), (rows[0]["session_date"], rows[0]["rider"], rows[0]["spell"], rows[0]["start_s"], rows[0]["end_s"]));
    }

    [Fact]
    public async Task WrittenAgain_TheFileIsNotTouched()
    {
        var dataset = Dataset.Open(_folder.Path);
        await Write(dataset, Model(Made.KeyA));
        var file = Assert.Single(dataset.FilesOf("flags"));
        File.SetLastWriteTimeUtc(file, new(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        await Write(dataset, Model(Made.KeyA));
        Assert.Equal(2020, File.GetLastWriteTimeUtc(file).Year);
        await Write(dataset, Rule(Made.KeyA));
        Assert.NotEqual(2020, File.GetLastWriteTimeUtc(file).Year);
    }

    [Fact]
    public async Task ClipWithoutFlagsNow_LosesItsFile_AndOtherRunsKeepTheirs()
    {
        var dataset = Dataset.Open(_folder.Path);
        await Write(dataset, Model(Made.KeyA), Model(Made.KeyB));
        await dataset.WriteFlagsAsync([Model(Made.KeyA, "pipe2")], new("pipe2", "model1"), "0", CancellationToken.None);
        await Write(dataset, Model(Made.KeyB));
        Assert.Equal([(Made.KeyA, "pipe2"), (Made.KeyB, "pipe1")], Query("SELECT clip_key, pipeline_hash FROM flags ORDER BY clip_key").Select(r => ((string)r["clip_key"]!, (string)r["pipeline_hash"]!)));
    }

    [Fact]
    public async Task ErasedClip_TakesItsFlagsWithIt()
    {
        var dataset = Dataset.Open(_folder.Path);
        await Write(dataset, Model(Made.KeyA), Model(Made.KeyB));
        Assert.Empty(Compactor.Run(_folder.Path, TimeProvider.System, CancellationToken.None).Problems);
        Assert.Equal(2L, Query("SELECT count(*) AS n FROM flags")[0]["n"]);
        dataset.Erase(Made.KeyA);
        Assert.Equal([Made.KeyB], Query("SELECT clip_key FROM flags").Select(r => r["clip_key"]));
        Assert.DoesNotContain(Directory.EnumerateFiles(_folder.Path, "*", SearchOption.AllDirectories), f => Path.GetFileName(f).StartsWith(Made.KeyA[..16], StringComparison.Ordinal));
    }

    /// <summary>Spells that are measured anew, as after a corrected stature, may lie elsewhere: old flags must not speak of them.</summary>
    [Fact]
    public async Task ClipMeasuredAnew_LosesItsFlags()
    {
        var dataset = Dataset.Open(_folder.Path);
        await Write(dataset, Model(Made.KeyA), Model(Made.KeyB));
        await dataset.WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        Assert.Equal([Made.KeyB], Query("SELECT clip_key FROM flags").Select(r => r["clip_key"]));
    }

    [Fact]
    public async Task FlagOfAnotherRun_IsRefused() =>
        await Assert.ThrowsAsync<ArgumentException>(() => Write(Dataset.Open(_folder.Path), Model(Made.KeyA, "pipe2")));

    private static Task Write(Dataset dataset, params FlagRecord[] flags) => dataset.WriteFlagsAsync(flags, Run, "0.1.0-test", CancellationToken.None);

    private static FlagRecord Model(string key, string pipeline = "pipe1") =>
        new(Spell(key, pipeline), Fault.ChairSeat, 0.87, null, ["thigh 56 ± 2 deg at the sit", "rise 9 ± 1 cm"], 3.5, 8.5, "chair seat 87 %", "classifier1", false);

    private static FlagRecord Rule(string key) => new(Spell(key, "pipe1"), Fault.ChairSeat, 0.9, new(2, Fault.ChairSeat, "stirrup_drift_offset_cm", new(30, 1), 22, "cm", 0.9, "s", 3, 9, [1], "Foot far ahead."), ["Foot far ahead."], 3, 9, "chair seat 90 %", null, false);

    private static RiddenSpell Spell(string key, string pipeline) =>
        new(Made.Provenance(key, pipeline), "R07", "H3", new(2026, 5, 31), "left", Made.Motion().Spells[1], Made.Motion().Strides, new Dictionary<string, string>());

    private IReadOnlyList<IReadOnlyDictionary<string, object?>> Query(string sql)
    {
        using var query = new DatasetQuery(_folder.Path);
        return query.Query(sql);
    }
}
