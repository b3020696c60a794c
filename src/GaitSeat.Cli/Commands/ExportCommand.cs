using System.ComponentModel;
using System.Globalization;
using GaitSeat.Model;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>A dataset in open formats: tables as CSV or Parquet, body points as COCO, TRC or C3D, strides and findings as WebVTT.</summary>
public sealed class ExportCommand(AnsiConsoles consoles) : Command<ExportCommand.Arguments>
{
    private static readonly string[] Formats = ["csv", "parquet", "coco", "trc", "c3d", "vtt"];

    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<format>")]
        [Description("csv or parquet (tables), coco, trc, c3d (body points) or vtt (strides and findings as cues beside the clips).")]
        public string Format { get; init; } = "";

        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset to export from.")]
        public string Dataset { get; init; } = "";

        [CommandOption("-o|--out <FOLDER>", isRequired: true)]
        [Description("Where the files go; those of the same name are replaced.")]
        public string Out { get; init; } = "";

        [CommandOption("--clips <FOLDER>")]
        [Description("The folder with the clips: its session sheet as it is today says whose consent still holds.")]
        public string? Clips { get; init; }

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash to export, where the dataset holds several runs.")]
        public string? Run { get; init; }

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("With coco: the pipeline file of the run, for the size of the analysed picture. Without it the default settings hold.")]
        public string? Pipeline { get; init; }

        [CommandOption("--by <NAME>")]
        [Description("Pseudonym of who exports, for the audit log.")]
        [DefaultValue("coach")]
        public string By { get; init; } = "coach";

        public override ValidationResult Validate() => Formats.Contains(Format)
            ? ValidationResult.Success()
            : ValidationResult.Error($"'{Format}' is no format; {string.Join(", ", Formats)} are allowed.");
    }

    public override int Execute(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        using var export = DatasetExport.Open(Datasets.OpenExisting(settings.Dataset).Folder, settings.Run, SheetOf(settings.Clips));
        // Logged before it is written: what is begun may already have left.
        if (export.ClipKeys.Count > 0) new AuditLog(settings.Dataset).Add(TimeProvider.System.GetUtcNow(), settings.By, "exported", settings.Format, export.Riders, export.ClipKeys, Path.GetFullPath(settings.Out));
        var summary = settings.Format switch
        {
            "csv" => export.Csv(settings.Out),
            "parquet" => export.Parquet(settings.Out),
            "coco" => export.Coco(settings.Out, MaxSidePx(export.Run, settings.Pipeline)),
            "trc" => export.Trc(settings.Out),
            "c3d" => export.C3d(settings.Out),
            _ => export.Vtt(settings.Out),
        };
        consoles.RawOut.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{summary.Files.Count} files, {summary.Rows} {(settings.Format is "csv" or "parquet" ? "rows" : settings.Format == "vtt" ? "cues" : "frames")}, in {settings.Out}"));
        foreach (var (reason, count) in summary.LeftOut.OrderBy(l => l.Key, StringComparer.Ordinal)) consoles.RawOut.WriteLine(string.Create(CultureInfo.InvariantCulture, $"left out: {reason} {count}"));
        if (summary.Files.Count == 0) consoles.Error.WriteLine("Nothing was exported.");
        return ExitCodes.Done;
    }

    /// <exception cref="DatasetException">There is no sheet, or it has errors: without it nobody's consent can be looked up.</exception>
    private static IReadOnlyDictionary<string, Session>? SheetOf(string? clips)
    {
        if (clips is null) return null;
        var sheet = SessionSheet.Read(Path.Combine(clips, SessionSheet.FileName), Today.Local);
        return sheet.Errors.Count == 0 ? sheet.Sessions : throw new DatasetException(string.Join(Environment.NewLine, ["The session sheet cannot be used:", .. sheet.Errors.Select(e => "  " + e)]));
    }

    /// <summary>Points are kept in pixels of the analysed picture, whose size follows from the settings.</summary>
    private static int MaxSidePx(DatasetRun run, string? file)
    {
        var pipeline = PipelineFile.ReadOrDefaults(file);
        return PipelineHash.Of(pipeline) == run.PipelineHash
            ? pipeline.Read.MaxSidePx
            : throw new DatasetException($"The run {run.PipelineHash} was measured with other settings than {file ?? "the defaults"}, so the size of its analysed pictures is not known. Name its pipeline file with --pipeline.");
    }
}
