using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

public sealed class DataDictionaryTests
{
    /// <summary>The names promised to readers of the tables; see the page of the vocabulary.</summary>
    private const string StridesColumnsThatStay =
        """
        clip_key, clip_file, session_date, season, rider, horse, rein, facing, spell, stride, gait, start_s, top_s, end_s, stride_duration_s, rise_height_cm,
        rise_height_pct_leg, over_stirrup_rise_cm, time_aloft_pct, sit_impact_cm_s, thigh_angle_sit_deg, thigh_angle_top_deg, shank_angle_sit_deg,
        knee_angle_sit_deg, knee_angle_top_deg, trunk_lean_sit_deg, trunk_lean_top_deg, foot_pitch_sit_deg, stirrup_drift_swing_cm, stirrup_drift_offset_cm,
        leather_swing_deg, stirrup_length_index_pct, ear_offset_cm, shoulder_offset_cm, heel_offset_cm, hand_travel_cm, scale_cm_per_px, view_yaw_deg,
        rider_height_px, quality, pipeline_hash, model_hash, software_version, schema_version
        """;

    [Fact]
    public void Strides_HaveThePromisedColumnsInTheirOrder()
    {
        var promised = StridesColumnsThatStay.Split([',', ' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);
        var columns = Columns("strides");
        Assert.Equal(promised, columns.Where(promised.Contains));
    }

    [Fact]
    public void EveryMeasure_HasAStandardErrorBesideIt()
    {
        var columns = Columns("strides");
        Assert.All(MeasureCatalogue.All, m => Assert.Equal(columns.IndexOf(m.Column) + 1, columns.IndexOf(m.Column + "_se")));
    }

    [Theory]
    [InlineData("clips")]
    [InlineData("tracks")]
    [InlineData("spells")]
    [InlineData("strides")]
    [InlineData("changes")]
    [InlineData("findings")]
    [InlineData("skipped")]
    public void EveryTable_CarriesProvenanceAndNoColumnTwice(string table)
    {
        var columns = Columns(table);
        Assert.Equal(columns.Distinct(), columns);
        Assert.All(["clip_key", "clip_file", "pipeline_hash", "model_hash", "software_version", "schema_version"], c => Assert.Contains(c, columns));
    }

    [Fact]
    public void Real_HasAUnitAndEveryColumnADefinition()
    {
        foreach (var column in TableList.All.SelectMany(t => t.Columns))
        {
            Assert.NotEmpty(column.Definition);
            if (column.Type == ColumnType.Real) Assert.NotEmpty(column.Unit);
        }
    }

    [Fact]
    public void CommittedPage_IsTheOneTheCodeMakes()
    {
        var path = Path.Combine(RepositoryRoot(), "docs", "data-dictionary.md");
        if (Environment.GetEnvironmentVariable("GAITSEAT_UPDATE") == "1") File.WriteAllText(path, DataDictionary.ToMarkdown());
        Assert.True(File.Exists(path), $"{path} is missing; run the tests once with GAITSEAT_UPDATE=1.");
        Assert.Equal(DataDictionary.ToMarkdown(), File.ReadAllText(path).ReplaceLineEndings("\n"));
    }

    private static List<string> Columns(string table) => [.. TableList.All.Single(t => t.Name == table).Columns.Select(c => c.Name)];

    private static string RepositoryRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "GaitSeat.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException($"No GaitSeat.sln above {AppContext.BaseDirectory}.");
    }
}
