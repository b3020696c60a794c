using System.ComponentModel;
using GaitSeat.Faults;
using GaitSeat.Model;
using GaitSeat.Pipeline.Flags;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Makes the flags of a run anew, as the end of every run and of a training does by itself: for a model put back by hand, or other settings.</summary>
public sealed class FlagCommand(AnsiConsoles consoles) : AsyncCommand<FlagCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset to flag.")]
        public string Dataset { get; init; } = "";

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash to flag, where the dataset holds several runs.")]
        public string? Run { get; init; }

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("The pipeline file the run was made with, for its rules and its part 'faults'. Without it the defaults hold.")]
        public string? Pipeline { get; init; }
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        var dataset = Datasets.OpenExisting(settings.Dataset);
        var (flags, lines) = await new FlagPass(pipeline, ProcessCommand.SoftwareVersion).RunAsync(dataset, RunOf(dataset, settings.Run), cancellationToken);
        foreach (var line in lines) consoles.Error.WriteLine(line);
        foreach (var fault in flags.GroupBy(f => f.Score.Fault).OrderBy(g => g.Key))
            consoles.RawOut.WriteLine($"{fault.Key.ToTerm(),-24}{fault.Count(),6} flags{(fault.Any(f => f.Score.ClassifierHash is not null) ? $", {fault.Count(f => f.Score.Rule is not null)} with the rule agreeing" : ", by rule")}");
        consoles.RawOut.WriteLine($"{flags.Count} flags in the table 'flags' of {dataset.Folder}.");
        consoles.RawOut.WriteLine(Cautions.Text);
        return ExitCodes.Done;
    }

    private static DatasetRun RunOf(Dataset dataset, string? pipelineHash)
    {
        using var query = new DatasetQuery(dataset.Folder);
        return DatasetRun.Choose(query, pipelineHash);
    }
}
