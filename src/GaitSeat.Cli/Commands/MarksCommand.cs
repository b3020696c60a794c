using System.ComponentModel;
using GaitSeat.Cli.Marks;
using GaitSeat.Cli.Privacy;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using GaitSeat.Studio;
using GaitSeat.Studio.Accuracy.Marks;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>
/// Runs the real pipeline on pictures with marked body points and prints how far it is off; or writes what was marked by hand on the review page as values of strides,
/// for a study of agreement.
/// </summary>
public sealed class MarksCommand(AnsiConsoles consoles) : AsyncCommand<MarksCommand.Arguments>
{
    private const string NotInFolder = "not_in_folder";

    public sealed class Arguments : LoggedArguments
    {
        [CommandArgument(0, "[folder]")]
        [Description("The folder with the marked stills and clips; they are known by their bytes, not their names. Not with --dataset.")]
        public string Folder { get; init; } = "";

        [CommandOption("-m|--marks <FILE>")]
        [Description("The table of marks. Without it datasets/marks/marks.csv.")]
        public string? Marks { get; init; }

        [CommandOption("--truth")]
        [Description("For marked clips with NAME.truth.json beside them: print how far the marks are from the truth, without running the pipeline.")]
        public bool Truth { get; init; }

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("A pipeline file with the settings to change.")]
        public string? Pipeline { get; init; }

        [CommandOption("-e|--errors <FILE>")]
        [Description("Also write every point's mark and reading there, as CSV.")]
        public string? Errors { get; init; }

        [CommandOption("-r|--report <FILE>")]
        [Description("Also write the report there, as Markdown.")]
        public string? Report { get; init; }

        [CommandOption("-d|--dataset <FOLDER>")]
        [Description("Instead: the dataset with marks made on the review page.")]
        public string? Dataset { get; init; }

        [CommandOption("--values <FILE>")]
        [Description("Where the strides' values by hand go, a CSV that a study names as values_file; one of that name is replaced.")]
        public string? Values { get; init; }

        [CommandOption("--blind")]
        [Description("Only marks that were made without seeing the tool's points.")]
        public bool Blind { get; init; }

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash whose strides are meant, where the dataset holds several runs.")]
        public string? Run { get; init; }

        public override ValidationResult Validate() => this switch
        {
            { Dataset: null, Values: null, Folder: "" } => ValidationResult.Error("Give the folder with the marked stills and clips, or --dataset and --values."),
            { Dataset: null, Values: null } => ValidationResult.Success(),
            { Dataset: null } or { Values: null } => ValidationResult.Error("--dataset and --values go together."),
            { Folder: not "" } => ValidationResult.Error("Give either a folder of marked pictures, or --dataset and --values."),
            _ => ValidationResult.Success(),
        };
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        if (settings is { Dataset: { } dataset, Values: { } values }) return WriteValues(dataset, values, settings);
        if (!Directory.Exists(settings.Folder))
        {
            consoles.Error.MarkupLineInterpolated($"no folder '{settings.Folder}'; give the folder with the marked stills and clips");
            return ExitCodes.WrongUsage;
        }

        IReadOnlyList<MarkedPicture> all;
        try
        {
            all = MarksFile.Read(settings.Marks ?? Path.Combine(Places.Home, "datasets", "marks", "marks.csv"));
        }
        catch (Exception e) when (e is FileNotFoundException or InvalidDataException)
        {
            consoles.Error.WriteLine(e.Message);
            return ExitCodes.WrongUsage;
        }

        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        var footage = new MarkedFootage(settings.Folder, all);
        using var workshop = Workshop.Open(FfmpegTools.Locate(), Places.Models(), pipeline);
        var readings = new List<PictureReading>();
        foreach (var ofFile in MarksFile.Merged(all).GroupBy(p => p.Sha256, StringComparer.Ordinal))
            readings.AddRange(await ReadAsync(workshop, [.. ofFile], footage.Find(ofFile.First()), settings.Truth, cancellationToken));

        var report = new MarksReport(readings, new MarkerRepeat(all)).ToMarkdown();
        consoles.RawOut.Write(report);
        if (settings.Errors is { } table) await File.WriteAllTextAsync(table, PointErrors.ToCsv(PointErrors.Of(readings)), cancellationToken);
        if (settings.Report is { } path) await File.WriteAllTextAsync(path, report, cancellationToken);
        return ExitCodes.Done;
    }

    private int WriteValues(string folder, string path, Arguments settings)
    {
        var dataset = Datasets.OpenExisting(folder);
        using var query = new DatasetQuery(dataset.Folder);
        var marks = HandMark.Standing(new MarkStore(dataset).All()).Where(m => !(settings.Blind && m.SawTool)).ToArray();
        var values = HandValues.Of(marks, SpellReader.Read(query, DatasetRun.Choose(query, settings.Run)));
        AuditNote.Add(folder, settings.By, "took values by hand", "csv", settings.Run, new HashSet<string>(), path);
        HandValuesFile.Write(path, values);
        consoles.Out.MarkupLineInterpolated($"{values.Lines.Count} strides with values by hand in '{path}', from {marks.Length} marks that stand{(settings.Blind ? " and were made blind" : "")}.");
        if (values.Unused > 0) consoles.Out.MarkupLineInterpolated($"{values.Unused} marked frames are in none: not within 5 % of a stride of a sit or top, or too few points for an angle.");
        return ExitCodes.Done;
    }

    private async Task<IReadOnlyList<PictureReading>> ReadAsync(Workshop workshop, IReadOnlyList<MarkedPicture> pictures, string? path, bool truth, CancellationToken ct)
    {
        if (path is null) return [.. pictures.Select(p => PictureReading.Missing(p, NotInFolder))];
        consoles.Error.MarkupLineInterpolated($"[grey]{Path.GetFileName(path)}: {pictures.Count}[/]");
        if (truth)
        {
            var known = TruthFile.Read(TruthFile.PathFor(Path.GetDirectoryName(path)!, Path.GetFileNameWithoutExtension(path)));
            return [.. pictures.Select(p => TruthReading.Of(p, known.FrameRows, known.Fps))];
        }

        return pictures[0].IsStill
            ? [await new StillSight(workshop).ReadAsync(pictures[0], path, ct)]
            : await new ClipSight(workshop).ReadAsync(pictures, path, ct);
    }
}
