using GaitSeat.Cli.Commands;
using GaitSeat.Faults.Teaching;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Review.Web;
using GaitSeat.Store;
using GaitSeat.Vision.Models;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli;

/// <summary>The commands, and how what goes wrong becomes a message and an exit code.</summary>
public static class CommandLine
{
    public static async Task<int> RunAsync(IEnumerable<string> args, AnsiConsoles consoles, CancellationToken ct)
    {
        var app = new CommandApp(new ConsoleRegistrar(consoles));
        app.Configure(config =>
        {
            config.SetApplicationName("gaitseat");
            config.SetApplicationVersion(ProcessCommand.SoftwareVersion);
            config.ConfigureConsole(consoles.Out);
            config.PropagateExceptions();
            config.AddCommand<ProcessCommand>("process").WithDescription("Measure every clip of a folder into a dataset.");
            config.AddCommand<WatchCommand>("watch").WithDescription("Watch a folder and measure what comes in, by night if so told, until stopped.");
            config.AddCommand<ClipCommand>("clip").IsHidden();
            config.AddCommand<SheetCommand>("sheet").WithDescription("Write a session sheet with the clips of a folder, or add the clips it lacks.");
            config.AddCommand<ConsentCommand>("consent").WithDescription("List what each rider of a folder has agreed to and until when, or write a file to fill in.");
            config.AddCommand<DemoCommand>("demo").WithDescription("Make the demo season, measure it and ask its study.");
            config.AddCommand<CheckCommand>("check").WithDescription("Tell what is installed and what is not.");
            config.AddCommand<AccuracyCommand>("accuracy").WithDescription("Measure footage with known truth and print the errors.");
            config.AddCommand<MarksCommand>("marks").WithDescription("Compare body points with marks made by eye in stills and clips.");
            config.AddCommand<VerdictsCommand>("verdicts").WithDescription("Take a coach's verdicts from a CSV into the dataset.");
            config.AddCommand<TrainCommand>("train").WithDescription("Train the fault models on the verdicts, and tell which take over.");
            config.AddCommand<FlagCommand>("flag").WithDescription("Make the flags table anew: every spell scored with the fault models in use and the rules.");
            config.AddCommand<QueueCommand>("queue").WithDescription("List the spells most worth a coach's minutes.");
            config.AddCommand<ReviewCommand>("review").WithDescription("Open the review page: the queue with its clips, answered by keyboard or touch.");
            config.AddCommand<QueryCommand>("query").WithDescription("Ask a dataset in SQL, or one of the ready questions.");
            config.AddCommand<CompactCommand>("compact").WithDescription("Gather a dataset's files into few large ones by season and rider, described for others.");
            config.AddCommand<StudyCommand>("study").WithDescription("Answer the questions of a study file from a dataset, with a report.");
            config.AddCommand<ExportCommand>("export").WithDescription("Write a dataset as CSV, Parquet, COCO, TRC, C3D or WebVTT.");
            config.AddCommand<ForgetCommand>("forget").WithDescription("Erase a rider from a dataset and prove it by a search; a dry run without --yes.");
            config.AddCommand<RetentionCommand>("retention").WithDescription("Erase sessions, pictures and copies older than they are to be kept; a dry run without --yes.");
            config.AddCommand<AuditCommand>("audit").WithDescription("Print who saw and exported what.");
            config.AddCommand<ReportCommand>("report").WithDescription("Write a page for one rider to take home: what was seen, how it goes, what to work on first.");
            config.AddCommand<KeyCommand>("key").WithDescription("Keep the names behind pseudonyms in an encrypted file, and look for names in file names.");
            config.AddCommand<SettingsCommand>("settings").WithDescription("Print a pipeline file with every setting, its meaning and its range.");
        });
        try
        {
            return await app.RunAsync(args, ct);
        }
        catch (OperationCanceledException)
        {
            consoles.Error.MarkupLine("[yellow]Stopped. What was finished is kept; the same command goes on from there.[/]");
            return ExitCodes.Stopped;
        }
        catch (Exception e) when (Known(e) is { } known)
        {
            consoles.Error.WriteLine(known.Text);
            return known.Code;
        }
    }

    private static (string Text, int Code)? Known(Exception e) => e switch
    {
        SettingsException s => ($"The settings file cannot be used:{Environment.NewLine}{s.Message}", ExitCodes.WrongUsage),
        SeasonException s => (string.Join(Environment.NewLine, [$"{s.Message}{(s.Problems.Count > 0 ? ":" : "")}", .. s.Problems.Select(p => "  " + p)]), ExitCodes.WrongUsage),
        TeachingException t => (t.Message, ExitCodes.WrongUsage),
        ReviewException r => (r.Message, ExitCodes.WrongUsage),
        DatasetException d => (d.Message, ExitCodes.WrongUsage),
        KeyFileException k => (k.Message, ExitCodes.WrongUsage),
        CommandAppException c => (c.Message, ExitCodes.WrongUsage),
        FfmpegNotFoundException f => (f.Message, ExitCodes.NotInstalled),
        ModelException m => (m.Message, ExitCodes.NotInstalled),
        _ => null,
    };
}
