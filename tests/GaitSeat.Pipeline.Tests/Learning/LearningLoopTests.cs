using GaitSeat.Cli;
using GaitSeat.Faults;
using GaitSeat.Faults.Tests.Season;
using GaitSeat.Model;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Learning;

/// <summary>A made season on disk: judged, learnt from, queued, and answered, by the program's own commands.</summary>
public sealed class LearningLoopTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-learning-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Verdicts_TrainAModelThatTheQueueThenFollows()
    {
        var ct = TestContext.Current.CancellationToken;
        var season = PlantedSeason.Make(riders: 24, clips: 8);
        var (dataset, verdicts, sheet, flags) = (Path.Combine(_folder, "season"), Path.Combine(_folder, "verdicts.csv"), Path.Combine(_folder, "fill.csv"), Path.Combine(_folder, "flags.parquet"));
        await WriteAsync(season, dataset, ct);
        await File.WriteAllLinesAsync(verdicts, season.Spells.Where(s => s.Provenance.ClipFile.EndsWith("-c7.mp4", StringComparison.Ordinal) == false)
            .Select(s => $"{s.Provenance.ClipFile},{s.Spell.Number},chair_seat,{(season.There.Contains(s.Key) ? "agrees" : "does_not")},C1,2026-06-01").Prepend("clip_file,spell,fault,verdict,judge,judged_at"), ct);

        var taken = await SeasonFolder.RunAsync(ct, "verdicts", verdicts, "--dataset", dataset);
        Assert.Equal((ExitCodes.Done, true), (taken.Code, taken.Out.Contains("168 verdicts added", StringComparison.Ordinal)));
        var trained = await SeasonFolder.RunAsync(ct, "train", "--dataset", dataset);
        Assert.Equal(ExitCodes.Done, trained.Code);
        Assert.Matches(@"chair_seat\s+replaces\s+Takes over", trained.Out);
        Assert.Matches(@"fork_seat\s+too_few\s+Nobody has judged it", trained.Out);
        Assert.Matches(@"\d+ flags in \d+ clips, \d+ of them on the 1 faults that a model speaks of", trained.Out);
        await FlagsStandInTheDatasetAsync(dataset, ct);

        var queued = await SeasonFolder.RunAsync(ct, "queue", "--dataset", dataset, "--minutes", "8", "--sheet", sheet, "--flags", flags);
        Assert.Equal(ExitCodes.Done, queued.Code);
        Assert.Contains("this rider's usual", queued.Out, StringComparison.Ordinal);
        Assert.True(File.Exists(flags));
        var asked = (await File.ReadAllLinesAsync(sheet, ct)).Skip(1).ToArray();
        Assert.Contains(asked, l => l.Contains(",random,not_flagged,", StringComparison.Ordinal));
        Assert.All(asked.Where(l => l.Contains(",ranked,", StringComparison.Ordinal)), l => Assert.Contains("-c7.mp4,", l, StringComparison.Ordinal));

        await File.WriteAllTextAsync(sheet, (await File.ReadAllTextAsync(sheet, ct)).Replace(",1,all,,,,", ",1,all,does_not,C1,2026-06-02,", StringComparison.Ordinal), ct);
        Assert.Equal(ExitCodes.Done, (await SeasonFolder.RunAsync(ct, "verdicts", sheet, "--dataset", dataset)).Code);
        Assert.Contains("a coach saw one in 0 of ", (await SeasonFolder.RunAsync(ct, "queue", "--dataset", dataset)).Out, StringComparison.Ordinal);
    }

    /// <summary>The flags are those of the model in use; flagging again changes no file; without the model the rules are back.</summary>
    private static async Task FlagsStandInTheDatasetAsync(string dataset, CancellationToken ct)
    {
        var flags = Query(dataset, "SELECT * FROM flags WHERE fault = 'chair_seat' ORDER BY probability DESC");
        var inUse = Path.Combine(dataset, "fault-models", "chair_seat", "in-use.json");
        Assert.All(flags, f => Assert.Contains((string)f["classifier_hash"]!, File.ReadAllText(inUse), StringComparison.Ordinal));
        Assert.Contains(flags, f => f["flagged_by"] is "model" && f["rule_probability"] is null && ((string)f["drivers"]!).Contains("this rider's usual", StringComparison.Ordinal));
        Assert.True((double)flags[0]["start_s"]! < (double)flags[0]["end_s"]!);

        var before = Files(dataset);
        Assert.Equal(ExitCodes.Done, (await SeasonFolder.RunAsync(ct, "flag", "--dataset", dataset)).Code);
        Assert.Equal(before, Files(dataset));

        var put = inUse + ".away";
        File.Move(inUse, put);
        Assert.Contains("by rule", (await SeasonFolder.RunAsync(ct, "flag", "--dataset", dataset)).Out, StringComparison.Ordinal);
        var findings = Query(dataset, "SELECT clip_key, spell, fault, summary FROM findings ORDER BY ALL");
        Assert.NotEmpty(findings);
        Assert.Equal(findings.Select(f => string.Join('|', f.Values)), Query(dataset, "SELECT clip_key, spell, fault, drivers FROM flags ORDER BY ALL").Select(f => string.Join('|', f.Values)));

        File.WriteAllText(inUse, "{");
        Assert.Contains("in-use.json' of the model for chair_seat cannot be read", (await SeasonFolder.RunAsync(ct, "flag", "--dataset", dataset)).Error.ReplaceLineEndings(""), StringComparison.Ordinal);
        File.Move(put, inUse, overwrite: true);
        await SeasonFolder.RunAsync(ct, "flag", "--dataset", dataset);
        Assert.Equal(before, Files(dataset));
    }

    private static List<(string, string)> Files(string dataset) =>
        [.. Directory.EnumerateFiles(Path.Combine(dataset, "flags")).Order(StringComparer.Ordinal).Select(f => (Path.GetFileName(f), Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(f)))))];

    private static IReadOnlyList<IReadOnlyDictionary<string, object?>> Query(string dataset, string sql)
    {
        using var query = new DatasetQuery(dataset);
        return query.Query(sql);
    }

    [Theory]
    [InlineData("queue")]
    [InlineData("train")]
    [InlineData("flag")]
    public async Task MissingDataset_IsSaidAndNotMade(string command)
    {
        var (code, _, error) = await SeasonFolder.RunAsync(TestContext.Current.CancellationToken, command, "--dataset", Path.Combine(_folder, "none"));
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("There is no dataset folder", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_folder, "none")));
    }

    private static async Task WriteAsync(PlantedSeason season, string folder, CancellationToken ct)
    {
        var dataset = Dataset.Open(folder);
        foreach (var s in season.Spells)
        {
            var session = new Model.Session(s.Provenance.ClipFile, s.SessionDate, null, s.Rider, s.Horse, BodyLengths.Unknown, null, null, s.Rein, true, null, s.Circumstances);
            var motion = new ClipMotion([s.Spell], s.Strides, [], ClipMotion.Nothing.Trace);
            await dataset.WriteAsync(new(s.Provenance, session, null, ClipStatus.Measured, null, null, null, motion, RuleFindings.Find([s.Spell], s.Strides, new()), [], 0), withTracks: false, ct);
        }
    }
}
