using System.ComponentModel;
using GaitSeat.Cli.Accuracy;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Studio;
using GaitSeat.Studio.Accuracy;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Measures footage with known truth (made here, or given) through the real pipeline and prints the errors.</summary>
public sealed class AccuracyCommand(AnsiConsoles consoles) : AsyncCommand<AccuracyCommand.Arguments>
{
    private const string TruthEnding = ".truth.json";

    public sealed class Arguments : CommandSettings
    {
        [CommandOption("-f|--footage <FOLDER>")]
        [Description("A folder of clips with NAME.truth.json and NAME.truth.csv beside NAME.mp4. Without it the studio makes a set.")]
        public string? Footage { get; init; }

        [CommandOption("-n|--clips <COUNT>")]
        [Description("How many clips the studio makes.")]
        public int Count { get; init; } = 24;

        [CommandOption("--seed <SEED>")]
        [Description("Seed of the made set; the same seed makes the same clips.")]
        public int Seed { get; init; } = 1;

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("A pipeline file with the settings to change.")]
        public string? Pipeline { get; init; }

        [CommandOption("-r|--report <FILE>")]
        [Description("Also write the report there, as Markdown.")]
        public string? Report { get; init; }

        [CommandOption("-w|--work <FOLDER>")]
        [Description("Where made clips and what was seen in each clip are kept, so that a stopped run goes on. Default: a folder under out beside the program.")]
        public string? Work { get; init; }

        [CommandOption("--reuse")]
        [Description("Take what an earlier run saw in the clips, with whatever settings, models and build: only the maths is done anew, in seconds.")]
        public bool Reuse { get; init; }
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var pipeline = settings.Pipeline is { } file ? PipelineFile.Read(file) : new PipelineSettings();
        var ffmpeg = FfmpegTools.Locate();
        var work = settings.Work ?? WorkFolder(settings);
        var footage = settings.Footage ?? await MadeAsync(ffmpeg, work, settings, cancellationToken);
        string[] truths = [.. Directory.EnumerateFiles(footage, "*" + TruthEnding).Order(StringComparer.Ordinal)];
        if (truths.Length == 0)
        {
            consoles.Error.MarkupLineInterpolated($"no *{TruthEnding} in '{footage}': nothing to compare with");
            return ExitCodes.WrongUsage;
        }

        var workshop = new Lazy<Workshop>(() => Workshop.Open(ffmpeg, Places.Models(), pipeline));
        var clips = new List<ClipErrors>();
        try
        {
            var store = new SeenStore(Path.Combine(work, "seen"), settings.Reuse);
            foreach (var truth in truths) clips.Add(await CompareAsync(store, workshop, pipeline, truth, cancellationToken));
        }
        finally
        {
            if (workshop.IsValueCreated) workshop.Value.Dispose();
        }

        var report = new AccuracyReport(clips).ToMarkdown();
        consoles.RawOut.Write(report);
        if (settings.Report is { } path) await File.WriteAllTextAsync(path, report, cancellationToken);
        return ExitCodes.Done;
    }

    private async Task<ClipErrors> CompareAsync(SeenStore store, Lazy<Workshop> workshop, PipelineSettings pipeline, string truthPath, CancellationToken ct)
    {
        var truth = TruthFile.Read(truthPath);
        var look = await store.LookAsync(truthPath[..^TruthEnding.Length] + ".mp4", pipeline, workshop, ct);
        if (look.Seen is not { } seen)
        {
            consoles.Error.MarkupLineInterpolated($"{truth.Clip}: set aside ({look.Reason}): {look.Detail}");
            return ClipErrors.Compare(truth, ClipMotion.Nothing, truth.Width);
        }

        var measured = ClipMeasurer.Measure(seen, new BodyLengths(StatureCm: 100 * truth.StatureM), pipeline);
        consoles.Error.MarkupLineInterpolated($"[grey]{truth.Clip}: {measured.Motion.Strides.Count} strides from {measured.Sightings.Count} frames[/]");
        return ClipErrors.Compare(truth, measured.Motion, measured.Sightings.WidthPx);
    }

    private static string WorkFolder(Arguments settings) => Path.Combine(
        Places.Home,
        "out",
        settings.Footage is { } given ? $"accuracy-{Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(given)))}" : $"accuracy-{settings.Seed}-{settings.Count}");

    /// <summary>Makes the set once; a second call with the same seed and count finds it.</summary>
    private async Task<string> MadeAsync(FfmpegTools ffmpeg, string folder, Arguments settings, CancellationToken ct)
    {
        var renderer = new StudioRenderer(ffmpeg);
        var number = 0;
        foreach (var script in AccuracySet.Scripts(settings.Seed, settings.Count))
        {
            var name = $"a{++number:00}-{script.Gait.ToTerm().Replace('_', '-')}";
            if (File.Exists(Path.Combine(folder, name + TruthEnding))) continue;
            consoles.Error.MarkupLineInterpolated($"[grey]making {name}[/]");
            await renderer.RenderAsync(script, folder, name, ct);
        }

        return folder;
    }
}
