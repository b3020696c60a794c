using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Pipeline.Worker;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Privacy;

/// <summary>
/// A dataset that tells of two riders wherever one can: tables, verdicts, a table of others' rows, pictures under both namings, journal, summary, log, cache, crash count, fault model, audit log,
/// and a compacted copy. <c>R1</c> is to be forgotten, <c>R12</c> stays; her clip is called <c>xa ü.mp4</c>, in which his <c>a ü.mp4</c> is found by whoever does not look at where a name begins.
/// </summary>
internal sealed class TracedSeason : IDisposable
{
    internal const string Rider = "R1", Other = "R12", File = "a ü.mp4", OtherFile = "xa ü.mp4";
    private readonly string _root = Directory.CreateTempSubdirectory("gaitseat-forget-").FullName;

    internal string Clips => Path.Combine(_root, "clips");

    internal Dataset Dataset { get; private set; } = null!;

    internal string Folder => Dataset.Folder;

    internal string Key { get; private set; } = "";

    internal string OtherKey { get; private set; } = "";

    internal ForgetRunTime Time { get; } = new();

    internal static async Task<TracedSeason> MakeAsync(bool compact = true)
    {
        var season = new TracedSeason();
        Directory.CreateDirectory(season.Clips);
        await System.IO.File.WriteAllTextAsync(season.PathOf(File), "his clip");
        await System.IO.File.WriteAllTextAsync(season.PathOf(OtherFile), "her clip");
        await System.IO.File.WriteAllTextAsync(season.PathOf(SessionSheet.FileName), $"clip_file,session_date,rider,consent,note\n{File},2026-05-01,{Rider},yes,\"two\nlines\"\n{OtherFile},2026-05-02,{Other},yes,\n");
        await System.IO.File.WriteAllTextAsync(season.PathOf(ConsentFile.FileName), $"rider,scope\n{Rider},all\n{Other},all\n");
        season.Dataset = Dataset.Open(Path.Combine(season._root, "dataset"));
        season.Key = await season.MeasureAsync(File);
        season.OtherKey = await season.MeasureAsync(OtherFile);
        await season.TellAsync();
        if (!compact) return season;
        Compactor.Run(season.Folder, season.Time, CancellationToken.None);
        DatasetPages.Write(season.Folder, new(), new(2026, 6, 1), "0");
        return season;
    }

    internal string PathOf(string clip) => Path.Combine(Clips, clip);

    internal string Put(string relative, string text)
    {
        var path = Path.Combine(Folder, relative);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private async Task<string> MeasureAsync(string file)
    {
        var work = new ClipWork(new StubStage(TimeSpan.Zero, _ => { }, _ => { }), Dataset, tracks: false, "0");
        var clip = await KeyedClip.OfAsync(PathOf(file), CancellationToken.None);
        await work.DoAsync(clip, SeasonSheet.Of(Clips, new(2026, 6, 1)).RowOf(file), null, CancellationToken.None);
        return clip.Key;
    }

    private async Task TellAsync()
    {
        foreach (var (key, file, rider) in new[] { (Key, File, Rider), (OtherKey, OtherFile, Other) })
        {
            await new VerdictStore(Dataset).AppendAsync(
                [new(key, file, 1, Fault.ChairSeat, VerdictAnswer.Agrees, "coach", new(2026, 5, 3, 9, 0, 0, TimeSpan.Zero), null, Drawn.Chosen, null, null, new('a', 64), new('b', 64), null)], CancellationToken.None);
            Put($"pictures/{Path.GetFileNameWithoutExtension(file)}-{key[..8]}-aaaaaaaa-sit.jpg", "a picture");
            Put($"pictures/{key[..16]}-aaaaaaaa-top.jpg", "a picture");
            Put($"worker/crashes/{key[..16]}-aaaaaaaa-bbbbbbbb.jsonl", "{}\n");
            Put($"fault-models/chair_seat/{key[..16]}/held-out.json", $"[{{\"clip\":\"{key}\",\"spell\":1,\"probability\":0.5}}]");
            new AuditLog(Folder).Add(Time.GetUtcNow(), "coach", "exported", "csv", [rider, "R99"], [key], $"/out/{rider}");
        }

        Put("fault-models/chair_seat/in-use.json", $"{{\"hash\":\"{Key}\"}}");
        Put("worker/logs/log.jsonl", $"{{\"Clip\":{System.Text.Json.JsonSerializer.Serialize(File)}}}\n{{\"Clip\":{System.Text.Json.JsonSerializer.Serialize(OtherFile)}}}\nboth riders: {Rider} and more\n");
        Put("worker/sessions/cache.json", $"{{\"lines\":[\"{Rider} on Drum\"]}}");
        using (var desk = WorkerDesk.Claim(Folder, "m"))
        {
            var window = WorkWindow.Parse(null, null, TimeZoneInfo.Utc);
            var (journal, known) = (new NightJournal(desk), new KnownClips(desk, ForgottenList.Read(Folder)));
            foreach (var (file, key) in new[] { (File, Key), (OtherFile, OtherKey) })
            {
                known.Add(ClipTicket.Of(new(PathOf(file))), key);
                journal.Add(new(2026, 5, 3), new(Time.GetUtcNow(), desk.Name, file, NightEnd.SetAside, StubStage.Reason, $"{file} is no clip", 0, 0, [], 1, 0));
            }

            new NightWriter(desk, journal, window, "season", Time).Write(new(2026, 5, 3), 0, []);
        }

        var shared = new LooseTable<(string Key, string Rider)>("shared", "Rows of both.", [LooseColumn.Text<(string Key, string Rider)>("clip_key", "", r => r.Key), LooseColumn.Text<(string Key, string Rider)>("rider", "", r => r.Rider)]);
        Directory.CreateDirectory(Path.Combine(Folder, "more"));
        await shared.WriteAsync([(Key, Rider), (OtherKey, Other), (OtherKey, Rider)], Path.Combine(Folder, "more", "shared.parquet"), CancellationToken.None);
    }

    internal sealed class ForgetRunTime : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);
    }
}
