using System.ComponentModel;
using GaitSeat.Cli.Learning;
using GaitSeat.Cli.Privacy;
using GaitSeat.Faults;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Queue;
using GaitSeat.Faults.Teaching;
using GaitSeat.Model;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>The spells most worth a coach's minutes, as a list and, where wanted, as a sheet to fill in.</summary>
public sealed class QueueCommand(AnsiConsoles consoles) : AsyncCommand<QueueCommand.Arguments>
{
    private const double LongestMinutes = 24 * 60;

    public sealed class Arguments : ConsentArguments
    {
        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset to look through.")]
        public string Dataset { get; init; } = "";

        [CommandOption("-m|--minutes <MINUTES>")]
        [Description("How long the coach has, minutes.")]
        [DefaultValue(30.0)]
        public double Minutes { get; init; }

        [CommandOption("--sheet <FILE>")]
        [Description("Write the list as a CSV to fill in; it then goes back with 'verdicts'.")]
        public string? Sheet { get; init; }

        [CommandOption("--flags <FILE>")]
        [Description("Write every flag of the run, not only those that fit the minutes, as a Parquet file. One of that name is replaced.")]
        public string? Flags { get; init; }

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash to look through, where the dataset holds several runs.")]
        public string? Run { get; init; }

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("The pipeline file the run was made with, for its rules and for flags, queue and drift watch (its part 'faults'). Without it the defaults hold.")]
        public string? Pipeline { get; init; }

        public override ValidationResult Validate() => Minutes is > 0 and <= LongestMinutes
            ? ValidationResult.Success()
            : ValidationResult.Error(FormattableString.Invariant($"--minutes {Minutes}: more than 0 and at most {LongestMinutes} is allowed."));
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var order = TeachingOrder.Read(Places.TeachingOrder);
        var cards = ExerciseCards.Read(Places.Exercises);
        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        var (faults, confidence) = (pipeline.Faults, pipeline.Faults.Training.Confidence);
        var season = JudgedSeason.Open(settings.Dataset, settings.Run, faults.Features, (query, run) => ConsentAsked.Of(query, run, settings.Dataset, ConsentUse.Show, settings.Clips));
        AuditNote.Add(settings.Dataset, settings.By, "listed", "queue", season.Run.PipelineHash, season.LeftOut.ClipKeys, settings.Sheet ?? settings.Flags);
        var models = season.ModelsInUse(consoles.Error.WriteLine);
        var flagger = new Flagger(models.ToDictionary(m => m.Key, m => m.Value.Model), pipeline.Rules, faults.Flags);
        var scores = flagger.Score(season.Table);
        var flags = flagger.Flag(scores);
        // The number of verdicts as seed: the same state of the dataset gives the same list, and each answer a new draw.
        var list = new QueueRanker(order, faults.Queue).Rank(scores, flags, season.Verdicts, settings.Minutes, season.Verdicts.Count);
        foreach (var line in QueueLines.Of(list, flags, order, cards)) consoles.RawOut.WriteLine(line);
        consoles.RawOut.WriteLine(QueueLines.Missed(MissedFaults.Of(season.Verdicts, confidence), list));
        foreach (var line in DriftLines.Of(season, models, faults.Drift, confidence)) consoles.RawOut.WriteLine(line);
        foreach (var line in season.LeftOut.Lines) consoles.RawOut.WriteLine(line);
        consoles.RawOut.WriteLine(Cautions.Text);
        return await WriteFilesAsync(settings, list, flags, cancellationToken);
    }

    private async Task<int> WriteFilesAsync(Arguments settings, ReviewList list, IReadOnlyList<Flag> flags, CancellationToken cancellationToken)
    {
        try
        {
            if (settings.Flags is { } table) await FlagsFile.Table.WriteAsync(flags, table, cancellationToken);
            if (settings.Sheet is not { } sheet) return ExitCodes.Done;
            VerdictSheet.WriteToFill(sheet, list.Items.SelectMany(QueueLines.Asked));
            consoles.RawOut.WriteLine($"{sheet}: fill in verdict (agrees, does_not, cannot_tell), judge and judged_at, then: gaitseat verdicts {sheet} --dataset {settings.Dataset}");
            return ExitCodes.Done;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            consoles.Error.WriteLine($"The file could not be written ({e.Message}). A sheet that is there is never written over, since it may hold answers: give another name in a folder that is there.");
            return ExitCodes.WrongUsage;
        }
    }
}
