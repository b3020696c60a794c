using System.Diagnostics;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using GaitSeat.Vision.Models;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Benchmarks;

/// <summary>
/// The goal of the season overnight: how many times faster than real time a lesson of 1080p30 is measured (a rider in rising trot in view a quarter of the time) and a clip that is trot throughout.
/// The whole program runs in a process of its own, without pictures; then, in this process, its stages one after the other and the bare floors: decoding alone, inference alone, and both at once.
/// </summary>
internal sealed class LessonRun(string folder, TextWriter output)
{
    private const int HeightPx = 1080;
    private const int EmptyForAQuarter = 4;

    private readonly PipelineSettings _settings = new();
    private readonly FfmpegTools _ffmpeg = FfmpegTools.Locate();
    private readonly ModelStore _models = WholeRun.Models();

    /// <param name="lessonMinutes">Length of the lesson; the goal is stated for 15.</param>
    /// <param name="trotMinutes">Length of the clip that is trot throughout.</param>
    public async Task<int> RunAsync(double lessonMinutes, double trotMinutes, CancellationToken ct)
    {
        var footage = new LessonFootage(_ffmpeg, folder);
        var clips = new List<(string Name, string Folder)>();
        if (lessonMinutes > 0) clips.Add(("lesson", await footage.ClipAsync($"lesson-{lessonMinutes:0.#}min", HeightPx, EmptyForAQuarter, lessonMinutes * 60, ct)));
        if (trotMinutes > 0) clips.Add(("trot throughout", await footage.ClipAsync($"trot-{trotMinutes:0.#}min", HeightPx, 0, trotMinutes * 60, ct)));
        output.WriteLine("| footage | length | whole run | × real time | processor | peak memory: program, largest FFmpeg |");
        output.WriteLine("|---|---|---|---|---|---|");
        foreach (var (name, clip) in clips) await WholeAsync(name, clip, ct);
        output.WriteLine();
        output.WriteLine("| footage | first pass | second pass | maths | tables | floors: decoding alone | inference alone | both at once | whole / slower floor | whole / both at once |");
        output.WriteLine("|---|---|---|---|---|---|---|---|---|---|");
        foreach (var (name, clip) in clips) await StagesAsync(name, Directory.GetFiles(clip, "*.mp4").Single(), ct);
        return 0;
    }

    private async Task WholeAsync(string name, string clips, CancellationToken ct)
    {
        var dataset = Directory.CreateTempSubdirectory("gaitseat-lesson-").FullName;
        try
        {
            var pipeline = Path.Combine(dataset, "p.yaml");
            await File.WriteAllTextAsync(pipeline, "output:\n  overlay: false\n  plot: false\n", ct);
            var info = await new ClipProbe(_ffmpeg, _settings.Probe).ProbeAsync(Directory.GetFiles(clips, "*.mp4").Single(), ct);
            var run = await ProgramRun.OfAsync(ct, "process", clips, "--dataset", Path.Combine(dataset, "dataset"), "--pipeline", pipeline);
            if (run.ExitCode != 0) throw new InvalidOperationException($"the program ended with {run.ExitCode}: {run.Out}");
            output.WriteLine($"| {name} | {info.DurationSeconds:0} s | {run.Seconds:0.0} s | {info.DurationSeconds / run.Seconds:0.00} | {run.ProcessorSeconds:0.0} s | {run.PeakMegabytes} MB, {run.ToolPeakMegabytes} MB |");
        }
        finally
        {
            Directory.Delete(dataset, recursive: true);
        }
    }

    private async Task StagesAsync(string name, string clip, CancellationToken ct)
    {
        using var workshop = Workshop.Open(_ffmpeg, _models, _settings);
        var info = await new ClipProbe(_ffmpeg, _settings.Probe).ProbeAsync(clip, ct);
        await WarmAsync(workshop, info, ct);

        var firstPass = Stopwatch.StartNew();
        var found = await new FirstPass(_ffmpeg, workshop.Detector, _settings).RunAsync(info, ct);
        firstPass.Stop();

        var both = Stopwatch.StartNew();
        var seen = await new ClipMeasurer(workshop).SeeAsync(clip, null, ct);
        both.Stop();
        var second = both.Elapsed - firstPass.Elapsed;
        var frames = seen.TimeSeconds.Length;

        var maths = Stopwatch.StartNew();
        var measured = ClipMeasurer.Measure(seen, BodyLengths.Unknown, _settings);
        maths.Stop();
        var tables = await TablesAsync(measured, ct);

        var floors = await new BareFloors(_ffmpeg, _models, _settings).MeasureAsync(info, seen, found.Detections, ct);
        var all = info.DurationSeconds * info.AverageFrameRateHz;
        var whole = (both.Elapsed + maths.Elapsed + tables).TotalSeconds;
        output.WriteLine(
            $"| {name} | {Took(firstPass.Elapsed, all)} | {Took(second, frames)} | {Took(maths.Elapsed, frames)} | {tables.TotalSeconds:0.00} s | {floors.DecodeSeconds:0.0} s | {floors.InferenceSeconds:0.0} s | {floors.TogetherSeconds:0.0} s | "
            + $"{floors.SlowerSeconds / whole:0.00} | {floors.TogetherSeconds / whole:0.00} |");
    }

    private static string Took(TimeSpan time, double frames) => $"{time.TotalSeconds:0.0} s ({frames / time.TotalSeconds:0}/s)";

    /// <summary>Code compiled, models loaded, before the clock starts.</summary>
    private async Task WarmAsync(Workshop workshop, ClipInfo info, CancellationToken ct)
    {
        await foreach (var frame in new FrameReader(_ffmpeg, FrameColours.Planes).ReadAsync(info, _settings.Read with { EndSeconds = 1 }, ct))
        {
            using (frame)
            {
                var whole = new BoxPx(0, 0, frame.WidthPx, frame.HeightPx);
                for (var worker = 0; worker < _settings.Run.PointWorkers; worker++)
                {
                    workshop.Detector.Detect(worker, frame);
                    workshop.Points.Read(worker, frame, whole, secondTurn: 0);
                }
            }
        }
    }

    private static async Task<TimeSpan> TablesAsync(ClipMeasurement measured, CancellationToken ct)
    {
        var folder = Directory.CreateTempSubdirectory("gaitseat-tables-").FullName;
        try
        {
            var provenance = new Provenance(new('a', 64), "clip.mp4", new('b', 64), new('c', 64), "0", Provenance.CurrentSchemaVersion);
            var dataset = Dataset.Open(folder);
            var clock = Stopwatch.StartNew();
            await dataset.WriteAsync(
                new(provenance, null, measured.Info, ClipStatus.Measured, null, null, measured.Sightings, measured.Motion, measured.Findings, measured.LeftOut, measured.Sightings.Count), withTracks: true, ct);
            return clock.Elapsed;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
