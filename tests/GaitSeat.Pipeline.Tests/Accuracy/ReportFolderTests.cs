using DuckDB.NET.Data;
using GaitSeat.Cli.Accuracy;
using GaitSeat.Model;
using GaitSeat.Studio;
using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Pipeline.Tests.Accuracy;

/// <summary>A report of two clips made by hand, read back by another program.</summary>
public sealed class ReportFolderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-report-").FullName;

    [Fact]
    public async Task Errors_ReadBackByDuckDb()
    {
        await ReportFolder.WriteAsync(_folder, "# page\n", [Clip("one", 0.5, "low"), Clip("two", -1.5, "good")], TestContext.Current.CancellationToken);

        Assert.Equal((12, 2), Query<(long, long)>("SELECT count(*), count(DISTINCT clip) FROM e", r => (r.GetInt64(0), r.GetInt64(1))));
        Assert.Equal((-0.5, 1.0, 0.4), Query<(double, double, double)>(
            "SELECT avg(error), avg(abs(error)), min(se) FROM e WHERE measure = 'rise_height_cm'", r => (Math.Round(r.GetDouble(0), 9), Math.Round(r.GetDouble(1), 9), r.GetDouble(2))));
        Assert.Equal((3, 0), Query<(int, int)>("SELECT sum(held)::INT, sum(1 - trusted)::INT FROM e WHERE measure = 'rise_height_cm' AND group_light = 'low'", r => (r.GetInt32(0), r.GetInt32(1))));
        Assert.Equal((0, "cm"), Query<(int, string)>("SELECT sum(held)::INT, any_value(unit) FROM e WHERE measure = 'rise_height_cm' AND clip = 'two'", r => (r.GetInt32(0), r.GetString(1))));
    }

    [Fact]
    public async Task Folder_HoldsPagesAndPlots()
    {
        await ReportFolder.WriteAsync(_folder, "# page\n", [Clip("one", 0.5, "low")], TestContext.Current.CancellationToken);

        string[] plots = ["agreement", "error-by-turn", "error-by-rider-height", "coverage", "gaits"];
        string[] expected = [.. plots.SelectMany(p => new[] { p + ".png", p + ".svg" }), "accuracy.md", "by-condition.md", "errors.parquet"];
        Assert.Equal(expected.Order(), Directory.EnumerateFiles(_folder).Select(Path.GetFileName).Order()!);
    }

    [Fact]
    public async Task NothingMeasured_IsAReportToo()
    {
        var clip = Clip("one", 0, "low");
        await ReportFolder.WriteAsync(_folder, "# page\n", [ClipErrors.Compare(clip.Truth, ClipResult.Without("no_rider", 1280))], TestContext.Current.CancellationToken);

        Assert.Equal(0, Query("SELECT count(*) FROM e", r => r.GetInt64(0)));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Three strides of 8 cm rise, each measured so much off with a standard error of 0.4 cm.</summary>
    private static ClipErrors Clip(string name, double off, string light)
    {
        var truth = new ClipTruth
        {
            Clip = name, Width = 1280, Height = 720, Fps = 30, Frames = 120, DurationS = 4, Gait = "rising", StatureM = 1.7, Facing = "right", Camera = "pan",
            YawNominalDeg = 0, PxPerMMean = 150, RiderPxHeightMean = 250, FirstInFrame = 0, LastInFrame = 119,
            Strides = [.. Enumerable.Range(0, 3).Select(i => new StrideTruth { SitS = i, TopS = i + 0.5, NextSitS = i + 1, RiseCm = 8, DriftOffsetHipCm = 5 })],
            Conditions = new Dictionary<string, string> { ["light"] = light },
        };
        Stride[] strides =
        [
            .. truth.Strides.Select((t, i) =>
            {
                var measures = new MeasureSet();
                measures[StrideMeasure.RiseHeightCm] = new(8 + off, 0.4);
                measures[StrideMeasure.StrideDuration] = new(1, 0.01);
                return new Stride(1, i + 1, Facing.Right, t.SitS, t.TopS, t.NextSitS, 1, "good", measures);
            }),
        ];
        return ClipErrors.Compare(truth, new(new([], strides, [], ClipMotion.Nothing.Trace), 1280, 120, []));
    }

    private T Query<T>(string sql, Func<DuckDBDataReader, T> read)
    {
        using var connection = new DuckDBConnection("DataSource=:memory:");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"WITH e AS (SELECT * FROM read_parquet('{Path.Combine(_folder, ErrorsTable.FileName)}')) {sql}";
        using var reader = command.ExecuteReader();
        Assert.True(reader.Read());
        return read((DuckDBDataReader)reader);
    }
}
