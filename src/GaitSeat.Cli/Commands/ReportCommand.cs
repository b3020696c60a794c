using System.ComponentModel;
using System.Globalization;
using GaitSeat.Cli.Learning;
using GaitSeat.Cli.Privacy;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Teaching;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Pupil;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>A page for one rider to take home.</summary>
public sealed class ReportCommand(AnsiConsoles consoles) : AsyncCommand<ReportCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<rider>")]
        [Description("The rider's pseudonym, as the session sheet writes it.")]
        public string Rider { get; init; } = "";

        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset the clips were measured into.")]
        public string Dataset { get; init; } = "";

        [CommandOption("--clips <FOLDER>", isRequired: true)]
        [Description("The folder with the clips and their session-sheet.csv, which says who agreed to a report.")]
        public string Clips { get; init; } = "";

        [CommandOption("-o|--out <FILE>")]
        [Description("The page to write. Without it report-<rider>.html here.")]
        public string? Out { get; init; }

        [CommandOption("--week <DAY>")]
        [Description("The last day of the week meant, such as 2026-05-31. Without it the week up to the rider's last session.")]
        public string? Week { get; init; }

        [CommandOption("--pdf")]
        [Description("Print it to PDF beside the page, too; needs Chromium.")]
        public bool Pdf { get; init; }

        [CommandOption("--no-pictures")]
        [Description("Leave clip and stills out. Making them takes as long as measuring the clip.")]
        public bool NoPictures { get; init; }

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash to report from, where the dataset holds several runs.")]
        public string? Run { get; init; }

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("The pipeline file the run was made with. Without it the defaults hold.")]
        public string? Pipeline { get; init; }

        [CommandOption("--by <NAME>")]
        [Description("Pseudonym of who makes the report, for the audit log.")]
        [DefaultValue("coach")]
        public string By { get; init; } = "coach";

        internal DateOnly? Through => Week is null ? null : DateOnly.TryParseExact(Week, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

        public override ValidationResult Validate() => Week is not null && Through is null
            ? ValidationResult.Error($"--week {Week}: a day written year-month-day such as 2026-05-31 is allowed.")
            : ValidationResult.Success();
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        if (!File.Exists(Path.Combine(settings.Clips, SessionSheet.FileName))) throw new SeasonException($"there is no {SessionSheet.FileName} in '{settings.Clips}', so nobody's consent to a report is known");
        var chromium = settings.Pdf ? ChromiumPdf.Find() ?? throw new SeasonException("no Chromium was found to print with; install it, name it in GAITSEAT_CHROMIUM, or open the page and print it yourself") : null;
        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        var judged = JudgedSeason.Open(settings.Dataset, settings.Run, pipeline.Faults.Features);
        var models = judged.ModelsInUse(consoles.Error.WriteLine).ToDictionary(m => m.Key, m => m.Value.Model);
        var flagger = new Flagger(models, pipeline.Rules, pipeline.Faults.Flags);
        using var query = new DatasetQuery(judged.Dataset.Folder);
        var request = new PupilRequest(
            settings.Rider, SpellReader.Read(query, judged.Run), flagger.Flag(flagger.Score(judged.Table)), judged.Verdicts, TeachingOrder.Read(Places.TeachingOrder), ExerciseCards.Read(Places.Exercises),
            settings.Clips, settings.Through, Today.Local);
        using var workshop = settings.NoPictures ? null : Workshop.Open(FfmpegTools.Locate(), Places.Models(), pipeline);
        var result = await PupilReport.MakeAsync(request, workshop is null ? null : (path, around, ct) => PupilPictures.MakeAsync(workshop, path, around, ct), cancellationToken);
        var page = Path.GetFullPath(settings.Out ?? $"report-{string.Concat(settings.Rider.Where(char.IsLetterOrDigit))}.html");
        try
        {
            new AuditLog(judged.Dataset.Folder).Add(TimeProvider.System.GetUtcNow(), settings.By, "reported", settings.Pdf ? "page and PDF" : "page", [settings.Rider], result.ClipKeys, page);
            await File.WriteAllTextAsync(page, result.Html, cancellationToken);
            consoles.RawOut.WriteLine(page);
            if (chromium is not null)
            {
                await ChromiumPdf.PrintAsync(chromium, page, Path.ChangeExtension(page, ".pdf"), cancellationToken);
                consoles.RawOut.WriteLine(Path.ChangeExtension(page, ".pdf"));
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new SeasonException($"the report could not be written: {e.Message}");
        }

        foreach (var note in result.Notes) consoles.Error.WriteLine(note);
        return ExitCodes.Done;
    }
}
