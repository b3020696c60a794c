using System.ComponentModel;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Watch.Children;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>One clip in a process of its own, for the worker: hears on standard input which, says in JSON lines how it went, and stops when its input ends.</summary>
public sealed class ClipCommand(AnsiConsoles consoles) : AsyncCommand<ClipCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<clip>")]
        [Description("The clip, for people who list processes; what counts comes on standard input.")]
        public string Clip { get; init; } = "";

        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset folder.")]
        public string Dataset { get; init; } = "";

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("The pipeline file of the worker.")]
        public string? Pipeline { get; init; }
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        using var workshop = Workshop.Open(FfmpegTools.Locate(), Places.Models(), pipeline);
        var dataset = SeasonRun.OpenDataset(settings.Dataset);
        var work = new ClipWork(new WorkshopStage(workshop), dataset, pipeline.Output.Tracks, ProcessCommand.SoftwareVersion);
        await new ChildSide(consoles.RawOut, Console.OpenStandardInput()).RunAsync(new LockedClip(work, dataset.Folder), cancellationToken);
        return ExitCodes.Done;
    }
}
