using GaitSeat.Faults;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Motion;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using GaitSeat.Studio;

namespace GaitSeat.Review.Tests;

/// <summary>
/// Riders of the demo's judged season on the days with most faults planted, drawn small so that there are films to look at, and measured from the studio's points: real strides and real flags in seconds. One
/// more clip was set aside.
/// </summary>
internal sealed class DemoMorning : IDisposable
{
    internal const string SetAside = "arena-empty.mp4";
    internal const int Riders = 7;
    private const int ClipsEach = 3, WidthPx = 400, HeightPx = 224;
    private const double Seconds = 4.5, RateHz = 25;

    /// <summary>No model looked: the points are the studio's.</summary>
    private static readonly string NoModels = new('0', 64);

    private readonly string _root = Directory.CreateTempSubdirectory("gaitseat-morning-").FullName;
    private readonly PipelineSettings _pipeline = new();

    internal string Clips => Path.Combine(_root, "clips");

    internal string Dataset => Path.Combine(_root, "dataset");

    /// <summary>A file beside clips and dataset.</summary>
    internal string Beside(string name) => Path.Combine(_root, name);

    internal static async Task<DemoMorning> MakeAsync(CancellationToken ct)
    {
        var morning = new DemoMorning();
        var season = DemoSeason.Load(Path.Combine(MadeSeason.Root, "datasets", "demo-season.json"));
        JudgedClip[] clips = [.. season.JudgedClips.GroupBy(c => c.Rider).Take(Riders).SelectMany(r => r.OrderByDescending(c => c.Planted.Count).Take(ClipsEach).OrderBy(c => c.Date))];
        Directory.CreateDirectory(morning.Clips);
        var dataset = Store.Dataset.Open(morning.Dataset);
        await Parallel.ForEachAsync(clips, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = ct }, async (clip, token) => await dataset.WriteAsync(await morning.MeasureAsync(clip, token), withTracks: true, token));
        await dataset.WriteAsync(await morning.SetAsideAsync(clips[0], ct), withTracks: false, ct);
        await File.WriteAllLinesAsync(
            Path.Combine(morning.Clips, SessionSheet.FileName),
            ["clip_file,session_date,rider,horse,consent", .. clips.Select(c => $"{c.Name}.mp4,{c.Date:yyyy-MM-dd},{c.Rider},{c.Horse},yes"), $"{SetAside},{clips[0].Date:yyyy-MM-dd},{clips[0].Rider},,yes"], ct);
        return morning;
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    /// <summary>Measured at the size the season is ridden in; the film shows the same, smaller, which takes a tenth of the time to draw.</summary>
    private async Task<ClipRecord> MeasureAsync(JudgedClip clip, CancellationToken ct)
    {
        var script = clip.Script with { DurationSeconds = Seconds, FrameRateHz = RateHz };
        var zoom = WidthPx / (double)script.WidthPx;
        var drawn = await new StudioRenderer(FfmpegTools.Locate()).RenderAsync(script with { WidthPx = WidthPx, HeightPx = HeightPx, RiderHeightPx = script.RiderHeightPx * zoom }, Clips, Beside("truth"), clip.Name, ct);
        var truth = UndrawnClip.TruthOf(script, clip.Name);
        var motion = MotionAnalysis.Analyse(UndrawnClip.See(truth, script.Seed, clip.RiderSeed), new(script.StatureCm), _pipeline.Motion);
        var file = Path.GetFileName(drawn.ClipPath);
        var info = await new ClipProbe(FfmpegTools.Locate(), _pipeline.Probe).ProbeAsync(drawn.ClipPath, ct);
        return new(
            ProvenanceOf(await ClipKey.OfFileAsync(drawn.ClipPath, ct), file),
            SessionOf(file, clip),
            info with { WidthPx = script.WidthPx, HeightPx = script.HeightPx }, ClipStatus.Measured, null, null, null, motion,
            RuleFindings.Find(motion.Spells, motion.Strides, _pipeline.Rules), motion.LeftOut, truth.Frames);
    }

    private async Task<ClipRecord> SetAsideAsync(JudgedClip with, CancellationToken ct)
    {
        var path = Path.Combine(Clips, SetAside);
        await File.WriteAllTextAsync(path, "stands for a clip nobody rides in", ct);
        return new(ProvenanceOf(await ClipKey.OfFileAsync(path, ct), SetAside), SessionOf(SetAside, with), null, ClipStatus.SetAside, "no_rider", $"{SetAside}: nobody on a horse was seen", null, null, [], [], 0);
    }

    private static Session SessionOf(string file, JudgedClip clip) =>
        new(file, clip.Date, null, clip.Rider, clip.Horse, new(clip.Script.StatureCm), null, null, clip.Script.Facing.ToTerm(), true, null, new Dictionary<string, string>());

    private Provenance ProvenanceOf(string key, string file) => new(key, file, PipelineHash.Of(_pipeline), NoModels, "0.1.0-test", Provenance.CurrentSchemaVersion);
}
