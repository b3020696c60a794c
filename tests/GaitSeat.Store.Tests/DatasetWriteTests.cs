using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class DatasetWriteTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Theory]
    [InlineData("clips", 1)]
    [InlineData("tracks", Made.Frames)]
    [InlineData("spells", 2)]
    [InlineData("strides", 3)]
    [InlineData("findings", 1)]
    [InlineData("skipped", 2)]
    public async Task MeasuredClip_HasItsRowsAndProvenanceInEveryTable(string table, int rows)
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        var found = Query($"SELECT DISTINCT count(*) OVER () AS n, clip_key, clip_file, pipeline_hash, model_hash, software_version, schema_version FROM {table}");
        var row = Assert.Single(found);
        Assert.Equal((long)rows, row["n"]);
        Assert.Equal(Made.KeyA, row["clip_key"]);
        Assert.Equal("clip-a.mp4", row["clip_file"]);
        Assert.Equal("pipe1", row["pipeline_hash"]);
        Assert.Equal("model1", row["model_hash"]);
        Assert.Equal("0.1.0-test", row["software_version"]);
        Assert.Equal(Provenance.CurrentSchemaVersion, row["schema_version"]);
    }

    [Fact]
    public async Task EveryTable_ReadByDuckDb_HasTheColumnsAndTypesOfItsDescription()
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        foreach (var table in TableList.All)
        {
            var found = Query($"DESCRIBE {table.Name}").Select(r => $"{r["column_name"]} {r["column_type"]}");
            Assert.Equal(table.Columns.Select(c => $"{c.Name} {DuckDbTypes.Of(c.Type)}"), found);
        }
    }

    [Fact]
    public async Task WhatCannotBeMeasured_IsNullNeverNaN()
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        foreach (var table in TableList.All.Where(t => t.Columns.Any(c => c.Type == ColumnType.Real)))
        {
            var real = table.Columns.Where(c => c.Type == ColumnType.Real).Select(c => $"isnan(\"{c.Name}\") OR isinf(\"{c.Name}\")");
            Assert.Equal(0L, Query($"SELECT count(*) AS n FROM {table.Name} WHERE {string.Join(" OR ", real)}")[0]["n"]);
        }

        var stride = Query("SELECT * FROM strides WHERE stride = 4")[0];
        Assert.Null(stride["thigh_angle_sit_deg"]);
        Assert.Null(stride["thigh_angle_sit_deg_se"]);
        Assert.Null(stride["rise_height_cm"]);
        Assert.Null(stride["rise_height_pct_leg_se"]);
        Assert.Equal(14.0, stride["rise_height_pct_leg"]);
        Assert.Equal(1L, Query("SELECT count(*) AS n FROM tracks WHERE tread_forward_pct_leg IS NULL")[0]["n"]);
    }

    [Fact]
    public async Task Stride_ReadsBackAsItWasGiven()
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        var row = Query("SELECT * FROM strides ORDER BY stride")[1];
        Assert.Equal(new DateOnly(2026, 5, 31), row["session_date"]);
        Assert.Equal("2026", row["season"]);
        Assert.Equal("R07", row["rider"]);
        Assert.Equal(9.0, row["stirrup_hole"]);
        Assert.Equal(62.5, row["leather_cm"]);
        Assert.Equal("right", row["facing"]);
        Assert.Equal("rising_trot", row["gait"]);
        Assert.Equal(0.74, row["stride_duration_s"]);
        Assert.Equal(0.004, row["stride_duration_s_se"]);
        Assert.Equal(5.0, row["start_s"]);
        Assert.Equal(5.4, row["top_s"]);
        Assert.Equal("good", row["quality"]);
    }

    [Fact]
    public async Task Spell_CarriesTheSpreadOfItsStrides()
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        var spells = Query("SELECT * FROM spells ORDER BY spell");
        Assert.Equal("walk", spells[0]["gait"]);
        Assert.Null(spells[0]["thigh_angle_sit_deg_mean"]);
        Assert.Null(spells[0]["bounce_cm"]);
        // 48 and 50 have a value, the third stride has none: mean 49, sample SD sqrt(2).
        Assert.Equal(49.0, (double)spells[1]["thigh_angle_sit_deg_mean"]!, 12);
        Assert.Equal(Math.Sqrt(2), (double)spells[1]["thigh_angle_sit_deg_sd"]!, 12);
        Assert.Equal(100 * Math.Sqrt(2) / 49, (double)spells[1]["thigh_angle_sit_deg_cv_pct"]!, 12);
        Assert.Equal(2.5, spells[1]["stride_duration_cv_pct"]);
        Assert.Equal(0.05, spells[1]["drift_creep_cm_per_stride_se"]);
        Assert.Equal(3, spells[1]["strides_kept"]);
        Assert.Equal(1, spells[1]["strides_dropped"]);
    }

    [Fact]
    public async Task FindingSkippedAndFrame_ReadBackInTheirWrittenForm()
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        var finding = Query("SELECT * FROM findings")[0];
        Assert.Equal("pressing_the_stirrup", finding["fault"]);
        Assert.Equal("1,4", finding["stride_numbers"]);
        Assert.Equal(6.5, finding["value"]);
        var skipped = Query("SELECT * FROM skipped ORDER BY scope");
        Assert.Equal("frame", skipped[0]["scope"]);
        Assert.Equal(7, skipped[0]["count"]);
        Assert.Equal(1.5, skipped[0]["start_s"]);
        Assert.Null(skipped[1]["start_s"]);
        var frames = Query("SELECT frame, frame_reason, hip_x_px, far_hip_y_px FROM tracks WHERE frame IN (2, 3) ORDER BY frame");
        Assert.Null(frames[0]["frame_reason"]);
        Assert.Equal("turned_out", frames[1]["frame_reason"]);
        Assert.Equal(6.0, frames[1]["hip_x_px"]);
        Assert.Equal(9.0, frames[1]["far_hip_y_px"]);
    }

    [Fact]
    public async Task ClipRow_CarriesCountsAndTheSheetsOwnColumns()
    {
        await Dataset.Open(_folder.Path).WriteAsync(Made.Measured(), withTracks: false, CancellationToken.None);
        var row = Query("SELECT *, extra->>'arena' AS arena FROM clips")[0];
        Assert.Equal("measured", row["status"]);
        Assert.Equal("süd", row["arena"]);
        Assert.Equal("wind; \"gusts\"", row["note"]);
        Assert.Equal(171.5, row["rider_stature_cm"]);
        Assert.Null(row["thigh_cm"]);
        Assert.Equal(Made.Frames, row["frames_analysed"]);
        Assert.Equal(7, row["frames_left_out"]);
        Assert.Equal(3, row["strides"]);
        Assert.Equal(1, row["flagged"]);
        Assert.Equal(29.97, row["frame_rate_hz"]);
    }

    [Fact]
    public async Task ClipSetAside_IsRecordedOnceWithItsReasonAndIsDone()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.SetAside(), withTracks: true, CancellationToken.None);
        Assert.True(dataset.IsDone(Made.KeyB, "pipe1", "model1"));
        var clip = Assert.Single(dataset.Clips());
        Assert.Equal(ClipStatus.SetAside, clip.Status);
        Assert.Equal("no_video_stream", clip.Reason);
        Assert.Null(clip.DurationSeconds);
        var skipped = Assert.Single(Query("SELECT * FROM skipped"));
        Assert.Equal("clip", skipped["scope"]);
        Assert.Equal("no_video_stream", skipped["reason"]);
        Assert.Empty(Query("SELECT * FROM strides"));
    }

    [Fact]
    public async Task ClipWithoutConsent_LeavesNoRowAndErasesEarlierOnes()
    {
        var dataset = Dataset.Open(_folder.Path);
        await dataset.WriteAsync(Made.Measured(), withTracks: true, CancellationToken.None);
        await dataset.WriteAsync(Made.Measured(pipeline: "pipe2"), withTracks: true, CancellationToken.None);
        await dataset.WriteAsync(Made.SetAside(), withTracks: true, CancellationToken.None);
        var refused = Made.Measured(session: Made.Session(consent: false));
        await Assert.ThrowsAsync<ArgumentException>(() => dataset.WriteAsync(refused, false, CancellationToken.None));
        await dataset.WriteAsync(refused with { Status = ClipStatus.NoConsent }, withTracks: true, CancellationToken.None);
        Assert.Equal(7, Directory.EnumerateFiles(_folder.Path, "*", SearchOption.AllDirectories).Count());
        Assert.All(TableList.All.Where(t => t.Columns.Any(c => c.Name == "clip_key")), t => Assert.Empty(Query($"SELECT * FROM {t.Name} WHERE clip_key = '{Made.KeyA}'")));
    }

    public void Dispose() => _folder.Dispose();

    private IReadOnlyList<IReadOnlyDictionary<string, object?>> Query(string sql)
    {
        using var query = new DatasetQuery(_folder.Path);
        return query.Query(sql);
    }
}
