using System.ComponentModel;
using GaitSeat.Cli.Marks;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Studio;
using GaitSeat.Studio.Accuracy.Marks;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Runs the real pipeline on pictures with marked body points and prints how far it is off.</summary>
public sealed class MarksCommand(AnsiConsoles consoles) : AsyncCommand<MarksCommand.Arguments>
{
    private const string NotInFolder = "not_in_folder";

    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<folder>")]
        [Description("The folder with the marked stills and clips; they are known by their bytes, not their names.")]
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
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
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

        var pipeline = settings.Pipeline is { } file ? PipelineFile.Read(file) : new PipelineSettings();
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
