using DuckDB.NET.Data;
using GaitSeat.Benchmarks;
using GaitSeat.Cli;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Study.Planning;

namespace GaitSeat.Pipeline.Tests.Studies;

/// <summary>A simulated season on disk, asked by the program's own command.</summary>
public sealed class StudyCommandTests(StudyDataset season) : IClassFixture<StudyDataset>, IDisposable
{
    private const string Dose = "question: How?\nkind: dose_response\noutcomes: [rise_height_cm]\nexposure: leather_cm\nadjustment: []\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-study-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task DoseResponse_FindsTheTruth_AndSaysItTwiceAlike()
    {
        var (code, text, _) = await RunAsync(Dose);
        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("540 strides, 12 riders", text, StringComparison.Ordinal);
        Assert.Contains("Not advice", text, StringComparison.Ordinal);
        var numbers = await File.ReadAllTextAsync(Path.Combine(_folder, "out", "numbers.csv"));
        double Number(string name) => double.Parse(numbers.Split('\n').Single(l => l.StartsWith($"1,rise_height_cm,{name},", StringComparison.Ordinal) || l.StartsWith($"1,rise_height_cm,\"{name}\",", StringComparison.Ordinal)).Split(',')[^1], System.Globalization.CultureInfo.InvariantCulture);
        // 0.3 per cm; the step is 2 cm.
        Assert.InRange(0.6, Number("effect +2, low"), Number("effect +2, high"));

        var page = await File.ReadAllBytesAsync(Path.Combine(_folder, "out", "report.html"));
        await RunAsync(Dose);
        Assert.Equal(numbers, await File.ReadAllTextAsync(Path.Combine(_folder, "out", "numbers.csv")));
        Assert.Equal(page, await File.ReadAllBytesAsync(Path.Combine(_folder, "out", "report.html")));
    }

    [Fact]
    public async Task Report_CountsWhatWasLeftOut_AndNamesFileAndRun()
    {
        await RunAsync(Dose + "title: Spring\n");
        var report = await File.ReadAllTextAsync(Path.Combine(_folder, "out", "report.md"));
        foreach (var said in (string[])["# Spring", "36 clips in the dataset", "stride left out: hole in points | 36 |", StudySeason.PipelineHash, "SHA-256", "./gaitseat study", "kind: dose_response"]) Assert.Contains(said, report, StringComparison.Ordinal);
    }

    /// <summary>The coach's value stands in a column of the sheet that the program does not know; the season's maker put it half a centimetre above the mean of the clip.</summary>
    [Fact]
    public async Task ColumnOfTheSheet_CanBeAskedFor()
    {
        var (code, text, _) = await RunAsync("question: Agree?\nkind: agreement\noutcomes: [rise_height_cm]\ncomparator: coach_rise_cm\naverage_over: clip_file\n");
        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("rise height: less coach_rise_cm −0.500 cm", text, StringComparison.Ordinal);
        Assert.Contains("36 pairs, 12 riders", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ValuesBesideTheStudyFile_AreJoined()
    {
        await File.WriteAllLinesAsync(Path.Combine(_folder, "coach.csv"), Enumerable.Range(0, 36).Select(i => $"clip-{i:D5}.mp4,{10 + i % 7}").Append("clip-99999.mp4,3").Prepend("clip_file,eye_cm"));
        var (code, text, _) = await RunAsync("question: Agree?\nkind: agreement\noutcomes: [rise_height_cm]\nvalues_file: coach.csv\ncomparator: eye_cm\naverage_over: clip_file\n");
        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("36 pairs", text, StringComparison.Ordinal);
        Assert.Contains("1 of 37 lines of coach.csv belong to no stride", await File.ReadAllTextAsync(Path.Combine(_folder, "out", "report.md")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("clip_file,eye_cm\nclip-00001.mp4,1\nclip-00001.mp4,2\n", "has 2 lines for clip_file clip-00001.mp4")]
    [InlineData("name,eye_cm\na,1\n", "shares no column with the strides")]
    [InlineData(null, "There is no file")]
    public async Task ValuesThatCannotBeJoined_AreRefused(string? csv, string message)
    {
        if (csv is not null) await File.WriteAllTextAsync(Path.Combine(_folder, "coach.csv"), csv);
        var (code, _, error) = await RunAsync("question: Agree?\nkind: agreement\noutcomes: [rise_height_cm]\nvalues_file: coach.csv\ncomparator: eye_cm\n");
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains(message, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task UnknownColumn_IsNamedWithItsLineAndItsNeighbours()
    {
        var (code, _, error) = await RunAsync("question: How?\nkind: dose_response\noutcomes: [rise_cm]\nexposure: leather_cm\n");
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("s.yaml:3: outcomes: unknown column 'rise_cm'; there are", error, StringComparison.Ordinal);
        Assert.Contains("rise_height_cm", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_folder, "out")));
    }

    [Theory]
    [InlineData("no rows are left after 'not leather_cm > 900'", "filters: ['leather_cm > 900']")]
    [InlineData("grouping 'rider' has one level", "filters: ['rider = rider 0003']", "dose: { horse: none }")]
    [InlineData("is a combination of others", "values_file: inches.csv", "adjustment: [leather_inches]", "dose: { comparison: pooled }")]
    [InlineData("did not converge", "dose: { model: { max_iterations: 1 } }")]
    public async Task QuestionThatCannotBeAnswered_SaysWhy_AndTheNextIsAnswered(string message, params string[] change)
    {
        await File.WriteAllLinesAsync(Path.Combine(_folder, "inches.csv"), StudyDataset.Lengths.Select(l => FormattableString.Invariant($"{l.Clip},{l.Cm / 2.54:R}")).Prepend("clip_file,leather_inches"));
        string[] lines = ["kind: dose_response", "outcomes: [rise_height_cm]", "exposure: leather_cm", "adjustment: []", "questions:", "  - question: First?", .. change.Select(c => "    " + c), "  - question: Second?"];
        var (code, text, _) = await RunAsync(string.Join('\n', lines));
        Assert.Equal(ExitCodes.SomeSetAside, code);
        Assert.Contains("no numbers: ", text, StringComparison.Ordinal);
        Assert.Contains(message, text, StringComparison.Ordinal);
        Assert.Contains("540 strides, 12 riders", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task NoAnswerAtAll_HasAnExitCodeOfItsOwn() => Assert.Equal(ExitCodes.NoneMeasured, (await RunAsync(Dose + "filters: ['leather_cm > 900']\n")).Code);

    [Fact]
    public async Task SingularFit_IsSaid()
    {
        // Sessions were drawn without a spread of their own.
        var (code, text, _) = await RunAsync(Dose.Replace("rise_height_cm", "sit_impact_cm_s", StringComparison.Ordinal));
        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("singular fit", text, StringComparison.Ordinal);
        Assert.Contains("Singular fit: as far as these data tell", await File.ReadAllTextAsync(Path.Combine(_folder, "out", "report.md")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task PlanningNeedsNoDataset_OthersDo()
    {
        var plan = "question: How many?\nkind: planning\nrider_counts: ['5']\nwanted_half_width: 1\npower: { simulations: 20 }\nplan: { horses: 0, strides_per_length: 4 }\n";
        Assert.Contains("5 riders, 4 strides", (await RunAsync(plan, dataset: null)).Out, StringComparison.Ordinal);
        var (code, _, error) = await RunAsync(Dose, dataset: null);
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("--dataset", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task MissingDataset_IsWrongUsage()
    {
        var (code, _, error) = await RunAsync(Dose, Path.Combine(_folder, "none"));
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("There is no dataset folder", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task DamagedFile_IsNamed()
    {
        var copy = season.CopyTo(Path.Combine(_folder, "copy"));
        var file = Directory.EnumerateFiles(Path.Combine(copy, "strides"), "*.parquet", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ElementAt(5);
        await File.WriteAllBytesAsync(file, (await File.ReadAllBytesAsync(file))[..200]);
        var (code, _, error) = await RunAsync(Dose, copy);
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains($"{Path.GetFileName(file)}' is damaged", error, StringComparison.Ordinal);
    }

    /// <summary>One file of a newer program among the others; older layouts are read as the present one (tests of the dataset).</summary>
    [Fact]
    public async Task MixedWithANewerLayout_IsRefused()
    {
        var copy = season.CopyTo(Path.Combine(_folder, "copy"));
        var file = Directory.GetFiles(Path.Combine(copy, "strides"), "*.parquet", SearchOption.AllDirectories)[0];
        using (var duck = new DuckDBConnection("DataSource=:memory:"))
        {
            duck.Open();
            using var command = duck.CreateCommand();
            command.CommandText = $"COPY (SELECT * REPLACE (CAST(99 AS INTEGER) AS schema_version) FROM read_parquet('{file}')) TO '{file}.new' (FORMAT parquet)";
            command.ExecuteNonQuery();
        }

        File.Move(file + ".new", file, overwrite: true);
        var (code, _, error) = await RunAsync(Dose, copy);
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("newer", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_folder, "out")));
    }

    [Fact]
    public async Task SeveralRuns_AreNotCountedTogether()
    {
        var copy = season.CopyTo(Path.Combine(_folder, "copy"));
        await StudySeason.WriteAsync(copy, StudyDataset.Plan with { Riders = 6 }, 6, TestContext.Current.CancellationToken, "other-pipeline");
        var (code, _, error) = await RunAsync(Dose, copy);
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("several runs", error, StringComparison.Ordinal);
        Assert.Contains("270 strides, 6 riders", (await RunAsync(Dose, copy, "--run", "other")).Out, StringComparison.Ordinal);
    }

    private Task<(int Code, string Out, string Error)> RunAsync(string yaml) => RunAsync(yaml, season.Folder);

    private async Task<(int Code, string Out, string Error)> RunAsync(string yaml, string? dataset, params string[] more)
    {
        var file = Path.Combine(_folder, "s.yaml");
        if (!File.Exists(file) || await File.ReadAllTextAsync(file) != yaml) await File.WriteAllTextAsync(file, yaml);
        var (code, output, error) = await SeasonFolder.RunAsync(TestContext.Current.CancellationToken, ["study", file, "--out", Path.Combine(_folder, "out"), .. dataset is null ? Array.Empty<string>() : ["--dataset", dataset], .. more]);
        return (code, output, error.ReplaceLineEndings(""));
    }
}

/// <summary>Twelve riders at three lengths, 540 strides, written once.</summary>
public sealed class StudyDataset : IAsyncLifetime
{
    internal static readonly SeasonPlanSettings Plan = new() { Riders = 12, LengthsPerRider = 3, StridesPerLength = 15, Horses = 5, EffectPerCm = 0.3, EffectSdPerCm = 0.05 };

    internal string Folder { get; } = Directory.CreateTempSubdirectory("gaitseat-season-").FullName;

    /// <summary>Length of the leather in each clip.</summary>
    internal static IEnumerable<(string Clip, double Cm)> Lengths =>
        SimulatedSeason.Draw(Plan with { HorsesPerRider = 1 }, new(Seed)).Exposure.Values.Chunk(Plan.StridesPerLength).Select((c, i) => ($"clip-{i:D5}.mp4", c[0]));

    private const int Seed = 5;

    public async ValueTask InitializeAsync() => await StudySeason.WriteAsync(Folder, Plan, Seed, CancellationToken.None);

    public ValueTask DisposeAsync()
    {
        Directory.Delete(Folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    internal string CopyTo(string folder)
    {
        foreach (var file in Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories))
        {
            var to = Path.Combine(folder, Path.GetRelativePath(Folder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        return folder;
    }
}
