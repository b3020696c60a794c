using System.ComponentModel;
using GaitSeat.Cli.Privacy;
using GaitSeat.Cli.Studies;
using GaitSeat.Model;
using GaitSeat.Pipeline.Studies;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Answers the questions of a study file from a dataset and writes the report.</summary>
public sealed class StudyCommand(AnsiConsoles consoles) : AsyncCommand<StudyCommand.Arguments>
{
    public sealed class Arguments : ConsentArguments
    {
        [CommandArgument(0, "<file>")]
        [Description("The study file (YAML): question, kind, outcomes, exposure, filters; see docs/study.md.")]
        public string File { get; init; } = "";

        [CommandOption("-d|--dataset <FOLDER>")]
        [Description("The dataset to ask. A study that only plans needs none.")]
        public string? Dataset { get; init; }

        [CommandOption("-o|--out <FOLDER>", isRequired: true)]
        [Description("Where report.html, report.md, numbers.csv and the pictures go. Files of the same name are replaced.")]
        public string Out { get; init; } = "";

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash to ask, where the dataset holds several runs.")]
        public string? Run { get; init; }
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var request = new StudyRequest(settings.File, settings.Dataset, settings.Run, settings.Out, StudyLines.Command(settings.File, settings.Dataset, settings.Run, settings.Out), ProcessCommand.SoftwareVersion) { LeaveOut = (query, run) => LeaveOut(settings, query, run) };
        try
        {
            var results = await Task.Run(() => StudyJob.Run(request, cancellationToken), cancellationToken);
            StudyLines.Write(consoles, results, settings.Out);
            return StudyLines.ExitCodeOf(results);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            consoles.Error.WriteLine($"The report could not be written to '{settings.Out}' ({e.Message}). Give a folder you may write to, on a disk with room.");
            return ExitCodes.WrongUsage;
        }
    }

    /// <summary>Told and logged before the first figure is read.</summary>
    private LeftOutClips LeaveOut(Arguments settings, DatasetQuery query, DatasetRun run)
    {
        var leftOut = ConsentAsked.Of(query, run, settings.Dataset!, ConsentUse.Study, settings.Clips);
        AuditNote.Add(settings.Dataset!, settings.By, "studied", Path.GetFileName(settings.File), run.PipelineHash, leftOut.ClipKeys, settings.Out);
        foreach (var line in leftOut.Lines) consoles.RawOut.WriteLine(line);
        return leftOut;
    }
}
