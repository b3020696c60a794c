using GaitSeat.Cli;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Privacy;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Pipeline.Tests.Watch;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Worker;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Privacy;

public sealed class ForgetTests
{
    [Theory]
    [InlineData("--yes")]
    [InlineData("--by")]
    public async Task WordThatOnlyStandsInNamesOfClips_IsNobody_AndNothingIsTouched(string option)
    {
        using var season = await TracedSeason.MakeAsync(compact: false);
        var before = DatasetBytes.Of(season.Folder);

        // The clips are called "a ü.mp4" and "xa ü.mp4".
        var (code, _, error) = await SeasonFolder.RunAsync(default, ["forget", "ü", "--dataset", season.Folder, "--clips", season.Clips, option, .. option == "--by" ? new[] { "coach" } : []]);

        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("there is no rider 'ü'", error, StringComparison.Ordinal);
        Assert.Equal(before, DatasetBytes.Of(season.Folder));
    }

    [Fact]
    public async Task DryRun_ChangesNothing_AndListsEveryPlace()
    {
        using var season = await TracedSeason.MakeAsync();
        var before = Snapshot(season.Folder);
        var plan = await Run(season).PlanAsync(TracedSeason.Rider, [], season.Clips, originals: true, CancellationToken.None);
        Assert.Equal(before, Snapshot(season.Folder));
        Assert.Equal([season.Key], plan.Order.ClipKeys);
        Assert.True(plan.LedgerFiles >= 7, $"{plan.LedgerFiles} files of the tables");
        Assert.Equal(2, plan.Files.Count(f => f.Path.StartsWith("pictures/", StringComparison.Ordinal)));
        Assert.Contains(plan.Files, f => f is { Path: "more/shared.parquet", Remedy: TraceRemedy.RewriteTable, Parts: 2 });
        Assert.Contains(plan.Files, f => f is { Path: "worker/logs/log.jsonl", Remedy: TraceRemedy.DropLines, Parts: 2 });
        Assert.Equal($"fault-models/chair_seat/{season.Key[..16]}", Assert.Single(plan.Models));
        Assert.Equal((1, 2), (plan.AuditLines, plan.SheetRows));
        Assert.Equal("/out/R1", Assert.Single(plan.HandedOut).Where);
        Assert.Equal(season.PathOf(TracedSeason.File), Assert.Single(plan.Sources));
    }

    [Fact]
    public async Task Forgotten_LeavesNothing_AndEverythingOfOthers()
    {
        using var season = await TracedSeason.MakeAsync();
        var result = await ForgetAsync(season, originals: true);
        Assert.True(result.IsClean, string.Join('\n', result.Proof.Found.Select(f => f.Path).Concat(result.Proof.Unread)));
        Assert.True(result.Proof is { Files: > 20, Tables: > 8 }, $"{result.Proof.Files} files, {result.Proof.Tables} tables searched");
        AssertGone(season);
        Assert.Equal(TracedSeason.OtherFile, Assert.Single(season.Dataset.Clips()).ClipFile);
        Assert.Equal(season.OtherKey, Assert.Single(new VerdictStore(season.Dataset).All()).ClipKey);
        foreach (var kept in new[]
        {
            $"pictures/xa ü-{season.OtherKey[..8]}-aaaaaaaa-sit.jpg", $"pictures/{season.OtherKey[..16]}-aaaaaaaa-top.jpg", $"worker/crashes/{season.OtherKey[..16]}-aaaaaaaa-bbbbbbbb.jsonl",
            $"fault-models/chair_seat/{season.OtherKey[..16]}/held-out.json", "compact/README.md", "compact/clips/season=2026/rider=R12/clips.parquet",
        }) Assert.True(File.Exists(Path.Combine(season.Folder, kept)), kept);
        foreach (var text in new[] { "worker/logs/log.jsonl", "worker/journal/m-1-2026-05-03.jsonl", "worker/known/m-1.jsonl" }) Assert.Single(File.ReadAllLines(Path.Combine(season.Folder, text)));
        foreach (var text in new[] { "md", "html" }) Assert.Contains("xa ", File.ReadAllText(Path.Combine(season.Folder, "worker", "summaries", "2026-05-03." + text)), StringComparison.Ordinal);
        // The model in use learnt from him; the note that names it goes with it, or nothing could be judged.
        Assert.False(File.Exists(Path.Combine(season.Folder, "fault-models", "chair_seat", "in-use.json")));
        var audit = new AuditLog(season.Folder).Read();
        Assert.Equal([[AuditLog.Forgotten, "R99"], ["R12", "R99"], []], audit.Select(e => e.Riders));
        Assert.Equal((0, AuditLog.Forgotten), (audit[0].Clips.Count, audit[0].Where));
        Assert.Equal("forgot a rider", audit[^1].Act);
        Assert.Equal(["clip_file,session_date,rider,consent,note", "xa ü.mp4,2026-05-02,R12,yes,"], File.ReadAllLines(season.PathOf(SessionSheet.FileName)));
        Assert.Equal(["rider,scope", "R12,all"], File.ReadAllLines(season.PathOf(ConsentFile.FileName)));
        Assert.False(File.Exists(season.PathOf(TracedSeason.File)));
        Assert.True(File.Exists(season.PathOf(TracedSeason.OtherFile)));
    }

    [Fact]
    public async Task WithoutOriginals_TheyStay_AndARunDoesNotMeasureThemAgain()
    {
        using var season = await TracedSeason.MakeAsync(compact: false);
        Assert.True((await ForgetAsync(season, originals: false)).IsClean);
        Assert.True(File.Exists(season.PathOf(TracedSeason.File)));

        var forgotten = ForgottenList.Read(season.Folder);
        Assert.Equal("forgotten", SeasonSheet.Of(season.Clips, new(2026, 6, 1)).Without(forgotten).RowOf(TracedSeason.File)!.Against(Model.ConsentUse.Measure)!.Reason);
        Assert.Null(SeasonSheet.Of(season.Clips, new(2026, 6, 1)).Without(forgotten).RowOf(TracedSeason.OtherFile)!.Against(Model.ConsentUse.Measure));
        // Under another name, without a row: the bytes are known.
        var again = await MeasureAsync(season, null);
        Assert.Equal((ClipEnd.NoConsent, "forgotten"), (again.End, again.Reason));
        Assert.Single(season.Dataset.Clips());
        Assert.DoesNotContain(TracedSeason.Rider + "\"", File.ReadAllText(Path.Combine(season.Folder, ForgottenList.FileName)), StringComparison.Ordinal);

        Assert.True(forgotten.Allow(TracedSeason.Rider));
        Assert.Equal(ClipEnd.SetAside, (await MeasureAsync(season, null)).End);
    }

    /// <summary>Torn off before a step (each third, with the long checks every one) and started again: it is finished each time, and nothing is left.</summary>
    [Fact]
    public async Task KilledAtAnyStep_IsFinishedByTheNextStart()
    {
        var steps = new List<string>();
        using (var whole = await TracedSeason.MakeAsync(compact: false)) await ForgetAsync(whole, originals: true, steps.Add);
        Assert.True(steps.Count >= 11, string.Join(' ', steps));
        for (var torn = 1; torn < steps.Count; torn += LongRun.IsOn ? 1 : 3)
        {
            using var season = await TracedSeason.MakeAsync(compact: false);
            var left = torn;
            await Assert.ThrowsAsync<InvalidOperationException>(() => ForgetAsync(season, originals: true, _ =>
            {
                if (left-- == 0) throw new InvalidOperationException("killed");
            }));

            var next = Run(season);
            var result = next.Do(next.Unfinished(CancellationToken.None)!, "coach", CancellationToken.None);
            Assert.True(result.IsClean, $"torn before step {torn}, {steps[torn]}: {string.Join(' ', result.Proof.Found.Select(f => f.Path))}");
            Assert.Null(next.Unfinished(CancellationToken.None));
            AssertGone(season);
            Assert.Equal(TracedSeason.OtherFile, Assert.Single(season.Dataset.Clips()).ClipFile);
            Assert.Single(new VerdictStore(season.Dataset).All());
        }
    }

    /// <summary>The proof must be able to fail: what comes in after the erasure is found, wherever it lies.</summary>
    [Fact]
    public async Task Proof_FindsWhatIsLeft()
    {
        (string Path, string Text)[] late =
        [
            ("notes.txt", "a word on R1, said later"), ("pictures/a%20ü.mp4.bin", "bytes"), ("studies/rider=R1/x.svg", "<svg/>"), ("studies/x.json", "{\"clip\":\"a \\u00FC.mp4\"}"), ("strides/hurt.parquet", "PAR1 no more"),
        ];
        using var season = await TracedSeason.MakeAsync(compact: false);
        var result = await ForgetAsync(season, originals: true, step =>
        {
            if (step == "proof") foreach (var (path, text) in late) season.Put(path, text);
        });
        Assert.False(result.IsClean);
        foreach (var (path, _) in late.SkipLast(1)) Assert.Contains(result.Proof.Found, f => f.Path == path);
        // Of a table that cannot be read nobody can say that nothing is in it.
        Assert.StartsWith("strides/hurt.parquet", Assert.Single(result.Proof.Unread), StringComparison.Ordinal);
        File.Delete(Path.Combine(season.Folder, "strides", "hurt.parquet"));
        Assert.NotNull(Run(season).Unfinished(CancellationToken.None));
        Assert.True(Run(season).Do(Run(season).Unfinished(CancellationToken.None)!, "coach", CancellationToken.None).IsClean);
    }

    [Fact]
    public async Task WorkerAtWork_IsNotErasedUnder()
    {
        using var season = await TracedSeason.MakeAsync(compact: false);
        using var worker = WorkerDesk.Claim(season.Folder, "m");
        var e = await Assert.ThrowsAsync<SeasonException>(() => Run(season).PlanAsync(TracedSeason.Rider, [], null, false, CancellationToken.None));
        Assert.Contains("'m-1' works on the dataset", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Retention_ErasesOldSessionsAlone()
    {
        using var season = await TracedSeason.MakeAsync(compact: false);
        Assert.Empty(OldClips.Find(season.Dataset, 31, new(2026, 6, 1)).ClipKeys);
        var old = OldClips.Find(season.Dataset, 30, new(2026, 6, 1));
        Assert.Equal([season.Key], old.ClipKeys);
        Assert.Equal((1, 0, new DateOnly(2026, 5, 2)), (old.Sessions, old.Undated, old.Before));

        var run = Run(season);
        var result = run.Do(await run.PlanAsync(null, old.ClipKeys, null, false, CancellationToken.None), "coach", CancellationToken.None);
        Assert.True(result.IsClean);
        Assert.Equal(TracedSeason.OtherFile, Assert.Single(season.Dataset.Clips()).ClipFile);
        // The rider is not forgotten: their next clips are measured.
        Assert.False(ForgottenList.Read(season.Folder).HasRider(TracedSeason.Rider));
        Assert.True(ForgottenList.Read(season.Folder).HasClip(season.Key));
    }

    private static ForgetRun Run(TracedSeason season, Action<string>? step = null) => new(season.Dataset, null, season.Time, "0") { Step = step ?? (_ => { }) };

    private static async Task<ForgetResult> ForgetAsync(TracedSeason season, bool originals, Action<string>? step = null)
    {
        var run = Run(season, step);
        return run.Do(await run.PlanAsync(TracedSeason.Rider, [], season.Clips, originals, CancellationToken.None), "coach", CancellationToken.None);
    }

    private static async Task<ClipOutcome> MeasureAsync(TracedSeason season, Model.Session? row) =>
        await new ClipWork(new StubStage(TimeSpan.Zero, _ => { }, _ => { }), season.Dataset, tracks: false, "0").DoAsync(await KeyedClip.OfAsync(season.PathOf(TracedSeason.File), CancellationToken.None), row, null, CancellationToken.None);

    /// <summary>Looked for apart from the search under test: names and raw bytes, and each table's key column by a query of its own.</summary>
    private static void AssertGone(TracedSeason season)
    {
        foreach (var path in Directory.EnumerateFiles(season.Folder, "*", SearchOption.AllDirectories).Where(p => Path.GetFileName(p) != ForgottenList.FileName))
        {
            Assert.DoesNotContain(season.Key[..8], path, StringComparison.Ordinal);
            var text = File.ReadAllText(path);
            Assert.DoesNotContain(season.Key[..16], text, StringComparison.Ordinal);
            Assert.False(System.Text.RegularExpressions.Regex.IsMatch(text, @"\bR1\b"), path);
        }

        using var query = new DatasetQuery(season.Folder);
        foreach (var table in TableList.All.Where(t => t.Columns.Any(c => c.Name == "clip_key"))) Assert.Empty(query.Query($"SELECT 1 FROM {table.Name} WHERE clip_key = '{season.Key}'"));
        Assert.Equal([season.OtherKey], query.Query($"SELECT clip_key FROM read_parquet('{Path.Combine(season.Folder, "more", "shared.parquet")}')").Select(r => (string)r["clip_key"]!));
    }

    private static string[] Snapshot(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => f + Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(f))))];
}
