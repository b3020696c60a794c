using System.ComponentModel;
using System.Reflection;
using GaitSeat.Cli.Output;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>The main job: a folder of clips to a dataset of strides.</summary>
public sealed class ProcessCommand(AnsiConsoles consoles) : AsyncCommand<ProcessCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<folder>")]
        [Description("The folder with the clips and, if there is one, session-sheet.csv.")]
        public string Folder { get; init; } = "";

        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset folder: tables and pictures go there.")]
        public string Dataset { get; init; } = "";

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("A pipeline file with the settings to change. Without it all defaults hold.")]
        public string? Pipeline { get; init; }

        [CommandOption("--json")]
        [Description("Print the summary as JSON on standard output.")]
        public bool Json { get; init; }
    }

    internal static string SoftwareVersion { get; } =
        typeof(ProcessCommand).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "0";

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        var summary = await RunAsync(consoles, new(settings.Folder, settings.Dataset), pipeline, cancellationToken);
        if (settings.Json) JsonReport.Write(consoles.RawOut, summary);
        else SummaryTable.Write(consoles.Out, summary);
        return ExitCodeOf(summary);
    }

    internal static async Task<SeasonSummary> RunAsync(AnsiConsoles consoles, SeasonRequest request, PipelineSettings pipeline, CancellationToken ct)
    {
        using var workshop = Workshop.Open(FfmpegTools.Locate(), Places.Models(), pipeline);
        var run = new SeasonRun(workshop, TimeProvider.System, SoftwareVersion, Environment.MachineName);
        return await ProgressWatcher.ShowAsync(consoles.Error, TimeProvider.System, watcher => run.RunAsync(request, watcher, ct));
    }

    internal static int ExitCodeOf(SeasonSummary summary)
    {
        var setAside = summary.Count(ClipEnd.SetAside) + summary.Count(ClipEnd.PutOff);
        if (setAside == 0) return ExitCodes.Done;
        return summary.Count(ClipEnd.Measured) + summary.Count(ClipEnd.AlreadyDone) > 0 ? ExitCodes.SomeSetAside : ExitCodes.NoneMeasured;
    }
}
