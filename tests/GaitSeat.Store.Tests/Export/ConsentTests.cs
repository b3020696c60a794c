using GaitSeat.Model;

namespace GaitSeat.Store.Tests.Export;

/// <summary>Nothing leaves of a rider who did not agree, in any format.</summary>
public sealed class ConsentTests(RiddenSeason season) : IClassFixture<RiddenSeason>
{
    public static TheoryData<string> Formats => ["csv", "coco", "trc", "c3d", "vtt"];

    [Theory]
    [MemberData(nameof(Formats))]
    public void ClipsWithoutConsent_AreInNoFileAndCounted(string format)
    {
        var summary = Export(format, season.Out("consent-" + format));
        Assert.NotEmpty(summary.Files);
        Assert.Equal(1, summary.LeftOut["no_consent_on_record"]);
        Assert.Equal(1, summary.LeftOut["consent_taken_back"]);
        foreach (var key in new[] { RiddenSeason.TakenBack, RiddenSeason.NoRow }) Assert.DoesNotContain(summary.Files, f => Names(f, key[..16]));
        Assert.Contains(summary.Files, f => Names(f, RiddenSeason.Agreed[..16]));
        Assert.DoesNotContain(summary.Files, f => Names(f, "clip-b") || Names(f, "clip-c") || Names(f, "R08"));
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void FullNamesAndFreeText_Stay(string format)
    {
        var summary = Export(format, season.Out("names-" + format));
        Assert.DoesNotContain(summary.Files, f => Names(f, "Anna") || Names(f, "gusts") || Names(f, "arena"));
        Assert.DoesNotContain(summary.Files, f => Names(f, "clip-a"));
    }

    [Fact]
    public void Csv_HasTheAgreedClipsUnderTheirPseudonyms()
    {
        var folder = season.Out("csv");
        using var export = DatasetExport.Open(season.Dataset, null, RiddenSeason.SheetOfToday);
        var summary = export.Csv(folder);
        Assert.Equal(["changes", "clips", "findings", "flags", "sessions", "skipped", "spells", "strides"], summary.Files.Select(f => Path.GetFileNameWithoutExtension(f)).Order());
        using var engine = Engine.Open();
        object? Ask(string sql, string table) => engine.Scalar(sql.Replace("FROM t", $"FROM read_csv('{Path.Combine(folder, table + ".csv")}')", StringComparison.Ordinal));
        Assert.Equal("R07,name-1", Ask("SELECT string_agg(DISTINCT rider ORDER BY rider) FROM t", "strides"));
        Assert.Equal(6L, Ask("SELECT count(*) FROM t", "strides"));
        Assert.Equal(8.46, Ask("SELECT min(rise_height_cm) FROM t", "strides"));
        // The session that one clip without consent had a part in stays too.
        Assert.Equal(1L, Ask("SELECT count(*) FROM t", "sessions"));
    }

    /// <summary>The same rows as CSV, read out of the compressed files: no file name, no free text, no full name.</summary>
    [Fact]
    public void Parquet_HoldsWhatCsvHolds()
    {
        var folder = season.Out("parquet");
        using var export = DatasetExport.Open(season.Dataset, null, RiddenSeason.SheetOfToday);
        var (parquet, csv) = (export.Parquet(folder), export.Csv(season.Out("parquet-csv")));
        Assert.Equal(csv.Rows, parquet.Rows);
        using var engine = Engine.Open();
        foreach (var file in parquet.Files)
        {
            var rows = engine.Scalar($"SELECT string_agg(t::VARCHAR, chr(10)) FROM read_parquet('{file}') t") as string ?? "";
            foreach (var told in new[] { "Anna", "gusts", "arena", "clip-a" }) Assert.DoesNotContain(told, rows, StringComparison.Ordinal);
        }

        Assert.Equal("R07,name-1", engine.Scalar($"SELECT string_agg(DISTINCT rider ORDER BY rider) FROM read_parquet('{Path.Combine(folder, "strides.parquet")}')"));
    }

    [Theory]
    [InlineData(ConsentUse.Measure | ConsentUse.Show, ConsentStanding.Given, "consent_without_export")]
    [InlineData(ConsentUse.Everything, ConsentStanding.Ended, "consent_ended")]
    [InlineData(ConsentUse.None, ConsentStanding.NotNamed, "not_in_consent_file")]
    public void ConsentThatDoesNotReachSoFar_KeepsTheClipBack(ConsentUse uses, ConsentStanding standing, string reason)
    {
        var sheet = RiddenSeason.SheetOfToday.ToDictionary(s => s.Key, s => s.Key == "clip-a.mp4" ? s.Value with { Terms = new(uses, null, standing) } : s.Value);
        using var export = DatasetExport.Open(season.Dataset, null, sheet);
        var summary = export.Vtt(season.Out("scope-" + reason));
        Assert.Equal(1, summary.LeftOut[reason]);
        Assert.DoesNotContain(summary.Files, f => Names(f, RiddenSeason.Agreed[..16]));
    }

    [Fact]
    public void ClipNotInTheSheetOfToday_Stays()
    {
        using var export = DatasetExport.Open(season.Dataset, null, RiddenSeason.SheetOfToday.Where(s => s.Key != "clip-a.mp4").ToDictionary());
        var summary = export.Vtt(season.Out("less"));
        Assert.Equal(1, summary.LeftOut["not_in_the_sheet"]);
        Assert.Equal(RiddenSeason.FullName[..16] + ".vtt", Path.GetFileName(Assert.Single(summary.Files)));
    }

    [Fact]
    public void WithoutASheet_WhatWasSaidAtMeasuringCounts()
    {
        using var export = DatasetExport.Open(season.Dataset, null, sheet: null);
        Assert.Equal([RiddenSeason.Agreed[..16] + ".vtt", RiddenSeason.TakenBack[..16] + ".vtt", RiddenSeason.FullName[..16] + ".vtt"], export.Vtt(season.Out("all")).Files.Select(f => Path.GetFileName(f)).Order());
    }

    private ExportSummary Export(string format, string folder)
    {
        using var export = DatasetExport.Open(season.Dataset, null, RiddenSeason.SheetOfToday);
        return format switch
        {
            "csv" => export.Csv(folder),
            "coco" => export.Coco(folder, 1280),
            "trc" => export.Trc(folder),
            "c3d" => export.C3d(folder),
            _ => export.Vtt(folder),
        };
    }

    private static bool Names(string file, string text) => file.Contains(text, StringComparison.Ordinal) || File.ReadAllText(file).Contains(text, StringComparison.Ordinal);
}
