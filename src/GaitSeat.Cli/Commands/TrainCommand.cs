using System.ComponentModel;
using GaitSeat.Cli.Learning;
using GaitSeat.Cli.Privacy;
using GaitSeat.Faults.Training;
using GaitSeat.Model;
using GaitSeat.Pipeline.Flags;
using GaitSeat.Pipeline.Privacy;
using GaitSeat.Pipeline.Settings;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Trains the fault models on the verdicts there are; a model takes over only where it is better beyond the noise.</summary>
public sealed class TrainCommand(AnsiConsoles consoles) : AsyncCommand<TrainCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset with verdicts.")]
        public string Dataset { get; init; } = "";

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash to learn from, where the dataset holds several runs.")]
        public string? Run { get; init; }

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("The pipeline file the run was made with, for its rules and for how faults are learnt (its part 'faults'). Without it the defaults hold.")]
        public string? Pipeline { get; init; }

        [CommandOption("--clips <FOLDER>")]
        [Description(ConsentArguments.ClipsHelp)]
        public string? Clips { get; init; }
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        var season = JudgedSeason.Open(settings.Dataset, settings.Run, pipeline.Faults.Features, (query, run) => ConsentAsked.Of(query, run, settings.Dataset, ConsentUse.Study, settings.Clips));
        foreach (var line in season.LeftOut.Lines) consoles.RawOut.WriteLine(line);
        foreach (var model in LearntModels.Drop(settings.Dataset, season.LeftOut.ClipKeys)) consoles.RawOut.WriteLine($"erased: fault model {model}, which had learnt from a clip that is left out now");
        consoles.Out.MarkupLineInterpolated($"{season.Table.Rows.Count} spells of rising trot ({season.Table.TooFewStrides} more have too few strides), {season.Verdicts.Count} verdicts.");
        var models = season.ModelsInUse(consoles.Error.WriteLine);
        foreach (var outcome in await SeasonTraining.RunAsync(season, models, pipeline, ProcessCommand.SoftwareVersion, cancellationToken)) Tell(season, outcome);
        foreach (var line in DriftLines.Of(season, models, pipeline.Faults.Drift, pipeline.Faults.Training.Confidence)) consoles.Out.WriteLine(line);
        // Anew: the models in use may be others than those the flags were made with.
        var (_, lines) = await new FlagPass(pipeline, ProcessCommand.SoftwareVersion).RunAsync(season.Dataset, season.Run, cancellationToken);
        foreach (var line in lines) consoles.Out.WriteLine(line);
        return ExitCodes.Done;
    }

    private void Tell(JudgedSeason season, TrainingOutcome outcome)
    {
        consoles.Out.MarkupLineInterpolated($"{outcome.Fault.ToTerm(),-24}{outcome.End.ToTerm(),-11}{outcome.Reason}");
        if (outcome.Model is { } model) consoles.Out.MarkupLineInterpolated($"{"",-35}{Path.Combine(season.Shelf.FolderOf(model), "card.md")}");
    }
}
