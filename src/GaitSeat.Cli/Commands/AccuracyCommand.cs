using System.ComponentModel;
using GaitSeat.Cli.Accuracy;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Studio.Accuracy;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Measures footage with known truth (made here, or given) through the real pipeline and prints the errors.</summary>
public sealed class AccuracyCommand(AnsiConsoles consoles) : AsyncCommand<AccuracyCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandOption("-f|--footage <FOLDER>")]
        [Description("A folder of clips with NAME.truth.json and NAME.truth.csv beside NAME.mp4. Without it the studio makes a set.")]
        public string? Footage { get; init; }

        [CommandOption("--set <SET>")]
        [Description("Which set the studio makes: narrow (side-on, good light) or wide (the conditions people really film in).")]
        public SetName Set { get; init; }

        [CommandOption("-n|--clips <COUNT>")]
        [Description("How many clips the studio makes. Default: 24 narrow, 100 wide.")]
        public int? Count { get; init; }

        [CommandOption("--seed <SEED>")]
        [Description("Seed of the made set; the same seed makes the same clips.")]
        public int Seed { get; init; } = 1;

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("A pipeline file with the settings to change.")]
        public string? Pipeline { get; init; }

        [CommandOption("-r|--report <FOLDER>")]
        [Description("Also write the report there: pages, every error as Parquet, plots as PNG and SVG.")]
        public string? Report { get; init; }

        [CommandOption("-w|--work <FOLDER>")]
        [Description("Where made clips and what was seen in each clip are kept, so that a stopped run goes on. Default: a folder under out beside the program.")]
        public string? Work { get; init; }

        [CommandOption("--reuse")]
        [Description("Take what an earlier run saw in the clips, with whatever settings, models and build: only the maths is done anew, in seconds.")]
        public bool Reuse { get; init; }

        [CommandOption("--budget")]
        [Description("Also run the maths with true points, scale, anchor and yaw in place of the measured ones, to show what limits each measure.")]
        public bool Budget { get; init; }

        public override ValidationResult Validate() =>
            Count is < 1 ? ValidationResult.Error($"--clips is {Count}; 1 or more are needed")
            : Footage is { } folder && !Directory.Exists(folder) ? ValidationResult.Error($"there is no folder '{folder}'")
            : ValidationResult.Success();
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        var ffmpeg = FfmpegTools.Locate();
        var set = new MadeSet(settings.Set, settings.Seed, settings.Count);
        var work = settings.Work ?? Path.Combine(Places.Home, "out", "accuracy-" + (settings.Footage is { } given ? NameOf(given) : set.Name));
        var footage = settings.Footage ?? work;
        if (settings.Footage is null) await set.MakeAsync(work, ffmpeg, consoles.Error, cancellationToken);
        string[] truths = [.. Directory.EnumerateFiles(footage, "*" + AccuracyRun.TruthEnding).Order(StringComparer.Ordinal)];
        if (Lacking(footage, truths) is { } lacking)
        {
            consoles.Error.WriteLine(lacking);
            return ExitCodes.WrongUsage;
        }

        var workshop = new Lazy<Workshop>(() => Workshop.Open(ffmpeg, Places.Models(), pipeline));
        var run = new AccuracyRun(new(Path.Combine(work, "seen"), settings.Reuse), workshop, pipeline, consoles.Error);
        try
        {
            foreach (var truth in truths) await run.AddAsync(truth, settings.Budget, cancellationToken);
        }
        catch (InvalidDataException e)
        {
            consoles.Error.WriteLine(e.Message);
            return ExitCodes.WrongUsage;
        }
        finally
        {
            if (workshop.IsValueCreated) workshop.Value.Dispose();
        }

        await ReportAsync(run, settings, cancellationToken);
        return ExitCodes.Done;
    }

    private async Task ReportAsync(AccuracyRun run, Arguments settings, CancellationToken ct)
    {
        var page = new AccuracyReport(run.Clips).ToMarkdown();
        if (settings.Budget) page += "\n## What limits each measure\n\n" + BudgetTable.Markdown(run.Budget);
        consoles.RawOut.Write(page);
        if (settings.Report is { } folder) await ReportFolder.WriteAsync(folder, page, run.Clips, ct);
    }

    private static string? Lacking(string footage, string[] truths) =>
        truths.Length == 0 ? $"no *{AccuracyRun.TruthEnding} in '{footage}': nothing to compare with"
        : Array.Find(truths, t => !File.Exists(AccuracyRun.ClipOf(t))) is { } alone ? $"'{alone}' has no clip beside it: '{AccuracyRun.ClipOf(alone)}' is needed"
        : null;

    private static string NameOf(string folder) => Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)));
}
