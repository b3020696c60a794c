using System.Diagnostics;
using GaitSeat.Faults;
using GaitSeat.Faults.Features;
using GaitSeat.Faults.Teaching;
using GaitSeat.Faults.Training;
using GaitSeat.Faults.Verdicts;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Review.Web;
using GaitSeat.Store;

namespace GaitSeat.Review.Tests;

/// <summary>
/// A small season made up for the tests: a clip a rider made by FFmpeg, its strides, points and sheet invented. The riders sit with the thigh at 62 degrees, which the
/// rules flag. One more rider has no consent.
/// </summary>
internal sealed class MadeSeason : IDisposable
{
    internal const string WithoutConsent = "Nettle", HostileNote = "<img src=x onerror=alert(1)> & \"so\"";
    internal const string Pipeline = "pipeline1", Models = "models12";
    private const int Frames = 100, Strides = 5;
    private const double StrideSeconds = 0.7, FrameSeconds = 0.04;
    private readonly string _root = Directory.CreateTempSubdirectory("gaitseat-review-").FullName;

    /// <summary>Every rider, the one without consent last.</summary>
    internal static IReadOnlyList<string> Riders { get; } = ["Alder", "Birch <b>", "Cedar", WithoutConsent];

    internal string Clips => Path.Combine(_root, "clips");

    internal string DatasetFolder => Path.Combine(_root, "dataset");

    internal Dictionary<string, string> Keys { get; } = [];

    internal static Task<MadeSeason> MakeAsync(bool withClips = true) => MakeAsync(withClips ? RecordAsync : (path, rider) => File.WriteAllTextAsync(path, $"stands for clip {rider}"));

    /// <param name="film">Makes the clip of a rider at a path; the files must differ.</param>
    internal static async Task<MadeSeason> MakeAsync(Func<string, int, Task> film)
    {
        var season = new MadeSeason();
        Directory.CreateDirectory(season.Clips);
        var dataset = Dataset.Open(season.DatasetFolder);
        for (var i = 0; i < Riders.Count; i++)
        {
            var path = Path.Combine(season.Clips, FileOf(i));
            await film(path, i);
            season.Keys[Riders[i]] = await ClipKey.OfFileAsync(path, CancellationToken.None);
            // As measured while there was consent still.
            await dataset.WriteAsync(Record(season.Keys[Riders[i]], i), withTracks: true, CancellationToken.None);
        }

        season.WriteSheet(i => Riders[i] != WithoutConsent);
        return season;
    }

    internal void WriteSheet(Func<int, bool> consent) => File.WriteAllLines(
        Path.Combine(Clips, SessionSheet.FileName),
        ["clip_file,session_date,rider,consent", .. Riders.Select((r, i) => $"{FileOf(i)},2026-05-0{i + 1},R{i},{(consent(i) ? "yes" : "no")}")]);

    internal ReviewSeason Open(double? minutes = null)
    {
        var dataset = Dataset.Open(DatasetFolder);
        using var query = new DatasetQuery(dataset.Folder);
        var run = DatasetRun.Choose(query, null);
        return ReviewSeason.Of(
            dataset, run, FeatureTable.Of(SpellReader.Read(query, run), new()), StandingVerdicts.Of(new VerdictStore(dataset).All()), new Dictionary<Fault, FaultModel>(), new RuleSettings(), new(),
            TeachingOrder.Read(Path.Combine(Root, "datasets", "teaching-order.json")), ExerciseCards.Read(Path.Combine(Root, "datasets", "exercises")), new ReadSettings(), minutes);
    }

    internal Task<ReviewSite> StartAsync(TimeProvider? time = null) => ReviewSite.StartAsync(Open(), Clips, "coach-1", 0, time ?? TimeProvider.System);

    internal IReadOnlyList<Verdict> Verdicts => new VerdictStore(Dataset.Open(DatasetFolder)).All();

    internal static string FileOf(int rider) => $"clip-{rider}.mp4";

    public void Dispose() => Directory.Delete(_root, recursive: true);

    /// <summary>The repository, upwards from the tests.</summary>
    internal static string Root { get; } = FindRoot();

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "GaitSeat.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException($"No GaitSeat.sln above {AppContext.BaseDirectory}.");
    }

    /// <summary>Four seconds of a moving test picture; the rider's number makes the files differ.</summary>
    private static async Task RecordAsync(string path, int rider)
    {
        string[] arguments = ["-v", "error", "-f", "lavfi", "-i", $"testsrc2=size=320x180:rate=25:duration=4,hue=h={40 * rider}", "-c:v", "libx264", "-pix_fmt", "yuv420p", "-g", "10", "-movflags", "+faststart", path];
        using var ffmpeg = Process.Start(new ProcessStartInfo(FfmpegTools.Locate().FfmpegPath, arguments)) ?? throw new InvalidOperationException("FFmpeg did not start.");
        await ffmpeg.WaitForExitAsync();
        if (ffmpeg.ExitCode != 0) throw new InvalidOperationException($"FFmpeg made no clip (exit code {ffmpeg.ExitCode}).");
    }

    private static ClipRecord Record(string key, int rider) => new(
        new(key, FileOf(rider), Pipeline, Models, "0.1.0-test", Provenance.CurrentSchemaVersion),
        new(FileOf(rider), new(2026, 5, 1 + rider), "2026", Riders[rider], "H1", BodyLengths.Unknown, null, null, "left", true, null, new Dictionary<string, string>()),
        new(FileOf(rider), 4, 320, 180, 25, "h264", "yuv420p", 0, false, new("mov,mp4", 0, 1, 12800, 0, "bt709", ColourMatrix.Bt709)),
        ClipStatus.Measured, null, null, null, Ride, [], [new(LeftOutScope.Stride, "hole_in_points", 2, "A hole longer than 0.12 s in the ankle.")], Frames);

    private static ClipMotion Ride { get; } = new(
        [new(1, Gait.RisingTrot, Facing.Right, 0.2, 0.2 + Strides * StrideSeconds, 0.95, 2.7, 8, 10, Strides, 0, Measured.Missing, 1)],
        [.. Enumerable.Range(0, Strides).Select(Stride)],
        [],
        new()
        {
            TimeSeconds = Each(i => i * FrameSeconds),
            SeatPctLeg = Each(i => 6 - 6 * Math.Cos(2 * Math.PI * (i * FrameSeconds - 0.2) / StrideSeconds)),
            BouncePctLeg = Each(_ => 0),
            TreadForwardPctLeg = Each(_ => 0),
            ThighAngleDeg = Each(_ => 62),
            Points = [.. Enum.GetValues<BodyPoint>().Select(p => new PointTrack(Each(_ => 160 + 4.0 * (int)p), Each(_ => 30 + 10.0 * (int)p), Each(_ => 0.9), Each(_ => 1)))],
        });

    private static Stride Stride(int i)
    {
        var measures = new MeasureSet
        {
            [StrideMeasure.StrideDuration] = new(StrideSeconds, 0.005),
            [StrideMeasure.ThighAngleSit] = new(62 + 0.5 * i, 1),
            [StrideMeasure.KneeAngleSit] = new(95, 2),
            [StrideMeasure.TrunkLeanSit] = new(5, 1),
            [StrideMeasure.RiseHeightPctLeg] = new(12, 0.5),
            [StrideMeasure.HeelOffsetPctLeg] = new(-4, 1),
            [StrideMeasure.StirrupDriftSwingPctLeg] = new(5 + 0.2 * i, 0.4),
        };
        var start = 0.2 + i * StrideSeconds;
        return new(1, i + 1, Facing.Right, start, start + StrideSeconds / 2, start + StrideSeconds, 0.95, "good", measures);
    }

    /// <summary>A flagged spell of a clip that is nowhere, for large queues.</summary>
    internal static RiddenSpell Spell(int clip) => new(
        new(clip.ToString("x16", System.Globalization.CultureInfo.InvariantCulture).PadRight(64, '0'), $"clip-{clip}.mp4", Pipeline, Models, "0.1.0-test", Provenance.CurrentSchemaVersion),
        $"R{clip % 200}", "H1", new DateOnly(2026, 5, 1).AddDays(clip % 90), "left", Ride.Spells[0], Ride.Strides, new Dictionary<string, string>());

    /// <summary>The spell with other thigh angles at the sit, degrees.</summary>
    internal static RiddenSpell WithThigh(RiddenSpell spell, Func<double, double> change)
    {
        Stride Changed(Stride s)
        {
            var measures = new MeasureSet();
            foreach (var m in MeasureCatalogue.All) measures[m.Measure] = s.Measures[m.Measure];
            measures[StrideMeasure.ThighAngleSit] = new(change(s.Measures[StrideMeasure.ThighAngleSit].Value), 1);
            return s with { Measures = measures };
        }

        return spell with { Strides = [.. spell.Strides.Select(Changed)] };
    }

    private static double[] Each(Func<int, double> value) => [.. Enumerable.Range(0, Frames).Select(value)];
}
