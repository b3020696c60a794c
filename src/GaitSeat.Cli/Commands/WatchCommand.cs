using System.ComponentModel;
using GaitSeat.Cli.Watching;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Children;
using Microsoft.Extensions.Logging;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>The worker: watches a folder and measures what comes in, night after night, until it is stopped.</summary>
public sealed class WatchCommand(AnsiConsoles consoles) : AsyncCommand<WatchCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<folder>")]
        [Description("The folder the clips come into, with session-sheet.csv if there is one.")]
        public string Folder { get; init; } = "";

        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset folder: tables, pictures, and under 'worker' logs and summaries.")]
        public string Dataset { get; init; } = "";

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("A pipeline file; its 'watch' part says how the worker behaves.")]
        public string? Pipeline { get; init; }

        [CommandOption("-w|--window <HOURS>")]
        [Description("When clips may be worked on, such as 22:00-06:00. Goes before watch.window of the pipeline file.")]
        public string? Window { get; init; }

        [CommandOption("-q|--queue <CONNECTION>")]
        [Description("PostgreSQL connection string of a queue shared by several workers; also read from GAITSEAT_QUEUE. Without it the queue is in memory.")]
        public string? Queue { get; init; }

        [CommandOption("--season <NAME>")]
        [Description("The season's name in a shared queue: the same on all machines. Without it the folder's own name.")]
        public string? Season { get; init; }
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        if (settings.Window is { } window) pipeline = pipeline with { Watch = pipeline.Watch with { Window = window } };
        var door = HealthDoor.Of(pipeline.Watch.HealthAddress, Environment.GetEnvironmentVariable(HealthDoor.PasswordVariable));
        using var workshop = Workshop.Open(FfmpegTools.Locate(), Places.Models(), pipeline);
        using var logs = WatchLogs.Open(consoles.Error, Path.Combine(settings.Dataset, "worker", "logs"), pipeline.Watch.LogDays);
        var probe = new ClipProbe(workshop.Ffmpeg, pipeline.Probe);
        var child = OwnProgram.Command(["clip", "--dataset", Path.GetFullPath(settings.Dataset), .. settings.Pipeline is { } p ? new[] { "--pipeline", Path.GetFullPath(p) } : []]);
        var parts = new WatchParts(
            _ => new ChildWorker(child, pipeline.Watch.Niceness, TimeSpan.FromSeconds(pipeline.Watch.StopSeconds)),
            (path, ct) => LengthAsync(probe, path, ct),
            logs.Logger,
            Environment.MachineName,
            ProcessCommand.SoftwareVersion,
            TimeProvider.System);
        var season = settings.Season ?? Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(settings.Folder)));
        var queue = settings.Queue ?? Environment.GetEnvironmentVariable("GAITSEAT_QUEUE");
        using var host = WatchHost.Open(new(settings.Folder, settings.Dataset, season, queue, pipeline), new WorkshopStage(workshop), parts);
        using var telemetry = Telemetry.Open();
        await using var page = pipeline.Watch.HealthPort is > 0 and var port ? await HealthPage.StartAsync(door, port, host) : null;
        if (page is not null && door.Warning is { } warning) logs.Logger.LogWarning("{Text}", warning);
        if (page is not null) consoles.Error.WriteLine($"health: {page.Address}/health, queue: {page.Address}/queue");
        consoles.Error.MarkupLineInterpolated($"watching {settings.Folder} as {host.Name}; stop with Ctrl-C or SIGTERM");
        await host.RunAsync(cancellationToken);
        return ExitCodes.Done;
    }

    private static async Task<double?> LengthAsync(ClipProbe probe, string path, CancellationToken ct)
    {
        try
        {
            return (await probe.ProbeAsync(path, ct)).DurationSeconds;
        }
        catch (Model.ClipSetAsideException)
        {
            // The clip's own process finds the same and records it.
            return null;
        }
    }
}
