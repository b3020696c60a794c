using GaitSeat.Model;
using GaitSeat.Motion;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Season;

/// <summary>From strides in Parquet to the sessions table; the strides are made up, the numbers in them exact.</summary>
public sealed class SessionPassTests : IDisposable
{
    private const string Run = "run1";

    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-sessions-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task ChangeBetweenClips_IsWrittenAndTold()
    {
        var dataset = Dataset.Open(_folder);
        // Written out of order: the clips of a session go by name.
        await AddAsync(dataset, 3, "c.mp4", 55, 80);
        await AddAsync(dataset, 1, "a.mp4", 41, 90);
        await AddAsync(dataset, 2, "b.mp4", 40.5, 90.5);
        await AddAsync(dataset, 4, "d.mp4", 55.5, 80.5);

        var line = Assert.Single(await RunAsync(dataset));

        Assert.Contains("Amber on Drum, 2026-04-01: stirrups seem shorter between b.mp4 and c.mp4", line, StringComparison.Ordinal);
        var thigh = Assert.Single(Rows("what = 'stirrup_change' and measure = 'thigh_angle_sit_deg'"));
        Assert.Equal(14.5, (double)thigh["difference"]!, 1e-9);
        Assert.Equal(("b.mp4", "c.mp4", 2, 2, 10), (thigh["clip_before"], thigh["clip_after"], thigh["clips_first"], thigh["clips_second"], thigh["strides_first"]));
        Assert.InRange((double)thigh["chance_probability"]!, 0.0009, 0.05);
    }

    [Fact]
    public async Task Reins_AreComparedWithinADay_OfOneRiderOnOneHorse()
    {
        var dataset = Dataset.Open(_folder);
        await AddAsync(dataset, 1, "a.mp4", 45, 88);
        await AddAsync(dataset, 2, "b.mp4", 47, 87, rein: "right");
        await AddAsync(dataset, 3, "c.mp4", 60, 70, rein: "right", rider: "Slate");
        await AddAsync(dataset, 4, "d.mp4", 60, 70, rein: "right", rider: null);
        await AddAsync(dataset, 5, "e.mp4", 60, 70, rein: "right", run: "run2");

        Assert.Empty(await RunAsync(dataset));

        var thigh = Assert.Single(Rows("measure = 'thigh_angle_sit_deg'"));
        Assert.Equal(("rein_difference", "Amber"), (thigh["what"], thigh["rider"]));
        Assert.Equal(2, (double)thigh["difference"]!, 1e-9);
        Assert.Equal((1, 1, 5, 5), (thigh["clips_first"], thigh["clips_second"], thigh["strides_first"], thigh["strides_second"]));
        Assert.True((double)thigh["difference_low95"]! < 0, "two clips cannot tell 2 deg from nothing");
    }

    [Fact]
    public async Task SecondPass_LeavesTheFilesAsTheyAre()
    {
        var dataset = Dataset.Open(_folder);
        await AddAsync(dataset, 1, "a.mp4", 45, 88);
        await AddAsync(dataset, 2, "b.mp4", 47, 87, rein: "right");
        await RunAsync(dataset);
        var file = Assert.Single(dataset.FilesOf("sessions"));
        File.SetLastWriteTimeUtc(file, new(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc));

        await RunAsync(dataset);

        Assert.Equal(2020, File.GetLastWriteTimeUtc(Assert.Single(dataset.FilesOf("sessions"))).Year);
    }

    private static Task<IReadOnlyList<string>> RunAsync(Dataset dataset) =>
        new SessionPass(new SessionSettings(), "0.1.0-test").RunAsync(dataset, Run, "model1", CancellationToken.None);

    private static Task AddAsync(Dataset dataset, int clip, string file, double thigh, double index, string rein = "left", string? rider = "Amber", string run = Run)
    {
        var session = new Session(file, new(2026, 4, 1), null, rider, "Drum", BodyLengths.Unknown, null, null, rein, Consent: true, null, new Dictionary<string, string>());
        var strides = Enumerable.Range(1, 5).Select(n => StrideOf(n, thigh, index)).ToArray();
        var spell = new Spell(1, Gait.RisingTrot, Facing.Left, 0, 4, 1, 2.7, double.NaN, 8, 5, 0, Measured.Missing, 2);
        var provenance = new Provenance(new string((char)('0' + clip), 64), file, run, "model1", "0.1.0-test", Provenance.CurrentSchemaVersion);
        return dataset.WriteAsync(
            new(provenance, session, null, ClipStatus.Measured, null, null, null, ClipMotion.Nothing with { Spells = [spell], Strides = strides }, [], [], 100), withTracks: false, CancellationToken.None);
    }

    private static Stride StrideOf(int number, double thigh, double index) =>
        new(1, number, Facing.Left, 0.7 * number, 0.7 * number + 0.3, 0.7 * (number + 1), 0.9, "good", new MeasureSet
        {
            [StrideMeasure.ThighAngleSit] = new(thigh, 3),
            [StrideMeasure.StirrupLengthIndex] = new(index, 5),
        });

    private List<IReadOnlyDictionary<string, object?>> Rows(string where)
    {
        using var query = new DatasetQuery(_folder);
        return [.. query.Query($"SELECT * FROM sessions WHERE {where}")];
    }
}
