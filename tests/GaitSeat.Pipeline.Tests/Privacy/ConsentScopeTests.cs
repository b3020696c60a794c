using GaitSeat.Cli;
using GaitSeat.Faults;
using GaitSeat.Faults.Tests.Season;
using GaitSeat.Model;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Pipeline.Tests.Studies;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Privacy;

/// <summary>Who did not agree to studies is in none, and no fault model learns from them; who did not agree to be shown is in no queue. What was left out is said, with the reason.</summary>
public sealed class ConsentScopeTests(StudyDataset season) : IClassFixture<StudyDataset>, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-scope-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Study_LeavesOutWhoDidNotAgree_AndSaysSo()
    {
        var file = Path.Combine(_folder, "study.yaml");
        await File.WriteAllTextAsync(file, "question: How?\nkind: dose_response\noutcomes: [rise_height_cm]\nexposure: leather_cm\nadjustment: []\n");
        var riders = RidersOf(season.Folder);
        ConsentRecord.Read(season.Folder).Keep([Row(riders[0], ConsentUse.Measure | ConsentUse.Show), Row(riders[1], ConsentUse.Everything, new(2026, 4, 1)), Row(riders[2], ConsentUse.Measure | ConsentUse.Study)]);
        var (code, text, _) = await SeasonFolder.RunAsync(default, "study", file, "--dataset", season.Folder, "--out", Path.Combine(_folder, "out"), "--by", "C2");

        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("450 strides, 10 riders", text, StringComparison.Ordinal);
        Assert.Contains("left out: 3 clips of 1 rider, consent without study", text, StringComparison.Ordinal);
        Assert.Contains("left out: 3 clips of 1 rider, consent ended", text, StringComparison.Ordinal);
        var report = await File.ReadAllTextAsync(Path.Combine(_folder, "out", "report.md"));
        Assert.Contains("36 clips in the dataset", report, StringComparison.Ordinal);
        Assert.Contains("clip set aside: consent without study | 3 |", report, StringComparison.Ordinal);
        var logged = new AuditLog(season.Folder).Read()[^1];
        Assert.Equal(("C2", "studied", "study.yaml", 10), (logged.Who, logged.Act, logged.What, logged.Riders.Count));
        Assert.DoesNotContain(riders[0], logged.Riders);
    }

    [Fact]
    public async Task Train_LearnsFromNobodyWhoDidNotAgree_AndUnlearns()
    {
        var ct = TestContext.Current.CancellationToken;
        var (dataset, verdicts) = (Path.Combine(_folder, "dataset"), Path.Combine(_folder, "verdicts.csv"));
        var made = PlantedSeason.Make(riders: 4, clips: 3);
        await WriteAsync(made, dataset, ct);
        await File.WriteAllLinesAsync(verdicts, made.Spells.Select(s => $"{s.Provenance.ClipFile},{s.Spell.Number},chair_seat,agrees,C1,2026-06-01").Prepend("clip_file,spell,fault,verdict,judge,judged_at"), ct);
        Assert.Equal(ExitCodes.Done, (await SeasonFolder.RunAsync(ct, "verdicts", verdicts, "--dataset", dataset)).Code);
        Assert.Contains("12 spells of rising trot (0 more have too few strides), 12 verdicts.", (await SeasonFolder.RunAsync(ct, "train", "--dataset", dataset)).Out, StringComparison.Ordinal);

        var rider = made.Spells[0].Rider!;
        var model = Directory.CreateDirectory(Path.Combine(dataset, "fault-models", "chair_seat", "0123456789abcdef")).FullName;
        await File.WriteAllTextAsync(Path.Combine(model, "held-out.json"), $"[{{\"clip\":\"{made.Spells[0].Provenance.ClipKey}\"}}]", ct);
        ConsentRecord.Read(dataset).Keep([Row(rider, ConsentUse.Measure | ConsentUse.Show)]);
        var (code, text, _) = await SeasonFolder.RunAsync(ct, "train", "--dataset", dataset);

        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("left out: 3 clips of 1 rider, consent without study", text, StringComparison.Ordinal);
        Assert.Contains("9 spells of rising trot (0 more have too few strides), 9 verdicts.", text, StringComparison.Ordinal);
        Assert.Contains("erased: fault model fault-models/chair_seat/0123456789abcdef", text, StringComparison.Ordinal);
        Assert.False(Directory.Exists(model));
        // The queue is for the coach's eye and not for learning.
        var queued = await SeasonFolder.RunAsync(ct, "queue", "--dataset", dataset);
        Assert.DoesNotContain("left out:", queued.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Queue_LeavesOutWhoMayNotBeShown_BySheetAndConsentFileOfToday()
    {
        var ct = TestContext.Current.CancellationToken;
        var (dataset, clips) = (Path.Combine(_folder, "dataset"), Directory.CreateDirectory(Path.Combine(_folder, "clips")).FullName);
        var made = PlantedSeason.Make(riders: 3, clips: 2);
        await WriteAsync(made, dataset, ct);
        var riders = made.Spells.Select(s => s.Rider!).Distinct().ToArray();
        await File.WriteAllLinesAsync(Path.Combine(clips, SessionSheet.FileName), made.Spells.Select(s => $"{s.Provenance.ClipFile},{s.Rider},yes").Prepend("clip_file,rider,consent"), ct);
        await File.WriteAllTextAsync(Path.Combine(clips, ConsentFile.FileName), $"rider,scope,until\n{riders[0]},measure study,\n{riders[1]},all,\n", ct);
        var (code, text, _) = await SeasonFolder.RunAsync(ct, "queue", "--dataset", dataset, "--clips", clips);

        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("left out: 2 clips of 1 rider, consent without show", text, StringComparison.Ordinal);
        Assert.Contains("left out: 2 clips of 1 rider, not in consent file", text, StringComparison.Ordinal);
        Assert.DoesNotContain(made.Spells[0].Provenance.ClipFile, text, StringComparison.Ordinal);
        var logged = Assert.Single(new AuditLog(dataset).Read());
        Assert.Equal(("listed", "queue"), (logged.Act, logged.What));
        Assert.Equal([riders[1]], logged.Riders);

        var (none, _, error) = await SeasonFolder.RunAsync(ct, "queue", "--dataset", dataset, "--clips", _folder);
        Assert.Equal(ExitCodes.WrongUsage, none);
        Assert.Contains("nobody's consent is known", error, StringComparison.Ordinal);
    }

    private static Model.Session Row(string rider, ConsentUse uses, DateOnly? until = null) =>
        new($"{rider}.mp4", null, null, rider, null, BodyLengths.Unknown, null, null, null, true, null, new Dictionary<string, string>()) { Terms = new(uses, until, ConsentStanding.Given) };

    private static string[] RidersOf(string dataset)
    {
        using var query = new DatasetQuery(dataset);
        return [.. query.Query("SELECT DISTINCT rider FROM clips ORDER BY rider").Select(r => (string)r["rider"]!)];
    }

    private static async Task WriteAsync(PlantedSeason season, string folder, CancellationToken ct)
    {
        var dataset = Dataset.Open(folder);
        foreach (var s in season.Spells)
        {
            var session = new Model.Session(s.Provenance.ClipFile, s.SessionDate, null, s.Rider, s.Horse, BodyLengths.Unknown, null, null, s.Rein, true, null, s.Circumstances);
            await dataset.WriteAsync(new(s.Provenance, session, null, ClipStatus.Measured, null, null, null, new([s.Spell], s.Strides, [], ClipMotion.Nothing.Trace), RuleFindings.Find([s.Spell], s.Strides, new()), [], 0), withTracks: false, ct);
        }
    }
}
