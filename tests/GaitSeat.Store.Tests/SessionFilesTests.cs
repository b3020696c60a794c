using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class SessionFilesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static readonly SessionKey Amber = new(new(2026, 4, 1), "Amber", "Drum");

    private static readonly SessionChangePlace Place = new(LengthChange.Shorter, "left", Facing.Left, "a.mp4", 41.5, "b.mp4", 0.3, 0.002);

    private static SessionRecord Record(SessionKey key, params SessionFact[] facts) => new(key, [Made.KeyA, Made.KeyB], "pipe1", "model1", "0.1.0-test", facts);

    private static SessionFact Change => new(
        SessionFactKind.StirrupChange, StrideMeasure.ThighAngleSit, new(44, 2.5), new(54, 2.6), new(10, 3), 0, 20, 24, 2, 3) { Change = Place };

    private static SessionFact Reins => new(SessionFactKind.ReinDifference, StrideMeasure.RiseHeightCm, new(8, 1), new(9, 1), new(1, 0.6), 0.8, 20, 24, 2, 2);

    [Fact]
    public async Task Facts_ReadBackByDuckDb()
    {
        await Write(Dataset.Open(_folder.Path), Record(Amber, Change, Reins));

        var rows = Query("SELECT * FROM sessions ORDER BY what");
        Assert.Equal(["rein_difference", "stirrup_change"], rows.Select(r => r["what"]));
        Assert.Equal("Drum", rows[0]["horse"]);
        Assert.Equal(new DateOnly(2026, 4, 1), rows[0]["session_date"]);
        Assert.Equal("cm", rows[0]["unit"]);
        Assert.Null(rows[0]["direction"]);
        // The interval of a comparison of reins allows for the models' habit: 0.6 and 0.8 make 1.
        Assert.Equal(1 - 1.959964, (double)rows[0]["difference_low95"]!, 1e-9);
        Assert.Equal(0.6, rows[0]["difference_se"]);
        Assert.Equal("shorter", rows[1]["direction"]);
        Assert.Equal("b.mp4", rows[1]["clip_after"]);
        Assert.Equal(10 + 1.959964 * 3, (double)rows[1]["difference_high95"]!, 1e-9);
        Assert.Contains(Made.KeyB, (string)rows[1]["clip_keys"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WrittenAgain_TheFileIsNotTouched()
    {
        var dataset = Dataset.Open(_folder.Path);
        await Write(dataset, Record(Amber, Change));
        var file = Assert.Single(dataset.FilesOf("sessions"));
        File.SetLastWriteTimeUtc(file, new(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        await Write(dataset, Record(Amber, Change));
        Assert.Equal(2020, File.GetLastWriteTimeUtc(file).Year);
        await Write(dataset, Record(Amber, Reins));
        Assert.NotEqual(2020, File.GetLastWriteTimeUtc(file).Year);
    }

    [Fact]
    public async Task SessionNoLongerThere_ItsFileOfThisRunGoes()
    {
        var dataset = Dataset.Open(_folder.Path);
        await Write(dataset, Record(Amber, Change), Record(Amber with { Rider = "Slate" }, Reins));
        await dataset.WriteSessionsAsync([Record(Amber, Change) with { PipelineHash = "pipe2" }], "pipe2", "model1", CancellationToken.None);
        Assert.Equal(3, dataset.FilesOf("sessions").Count);
        await Write(dataset, Record(Amber with { Rider = "Slate" }, Reins));
        Assert.Equal([("Amber", "pipe2"), ("Slate", "pipe1")], Query("SELECT rider, pipeline_hash FROM sessions ORDER BY rider").Select(r => ((string)r["rider"]!, (string)r["pipeline_hash"]!)));
    }

    [Fact]
    public async Task ErasedClip_TakesTheSessionsItBelongedToWithIt()
    {
        var dataset = Dataset.Open(_folder.Path);
        await Write(dataset, Record(Amber, Change), Record(Amber with { Rider = "Slate" }, Reins) with { ClipKeys = [Made.KeyB] }, Record(Amber with { Rider = "Flint" }));
        Assert.Equal(1, dataset.Erase(Made.KeyA));
        Assert.Equal(["Slate"], Query("SELECT rider FROM sessions").Select(r => r["rider"]));
        Assert.Equal(2, dataset.FilesOf("sessions").Count);
    }

    [Fact]
    public async Task SessionTwice_IsRefused() =>
        await Assert.ThrowsAsync<ArgumentException>(() => Write(Dataset.Open(_folder.Path), Record(Amber, Change), Record(Amber, Reins)));

    [Fact]
    public async Task ChangeWithinAClip_HasARowForEachMeasure()
    {
        var motion = Made.Motion();
        var shift = new StirrupShift(LengthChange.Longer, Facing.Right, motion.Strides[0], motion.Strides[2], 2, 3, 0.001,
            [new(StrideMeasure.ThighAngleSit, new(50, 2), new(40, 2), new(-10, 3)), new(StrideMeasure.StirrupLengthIndex, new(84, 4), new(91, 4), new(7, 1))]);
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured() with { Motion = motion with { Changes = [shift] } }, withTracks: false, CancellationToken.None);

        var rows = Query("SELECT * FROM changes ORDER BY measure");
        Assert.Equal(["stirrup_length_index_pct", "thigh_angle_sit_deg"], rows.Select(r => r["measure"]));
        Assert.All(rows, r => Assert.Equal("longer", r["direction"]));
        Assert.Equal(motion.Strides[0].EndSeconds, rows[1]["before_end_s"]);
        Assert.Equal(-10 - 3 * 1.959964, (double)rows[1]["difference_low95"]!, 1e-9);
    }

    public void Dispose() => _folder.Dispose();

    private static Task Write(Dataset dataset, params SessionRecord[] sessions) => dataset.WriteSessionsAsync(sessions, "pipe1", "model1", CancellationToken.None);

    private IReadOnlyList<IReadOnlyDictionary<string, object?>> Query(string sql)
    {
        using var query = new DatasetQuery(_folder.Path);
        return query.Query(sql);
    }
}
