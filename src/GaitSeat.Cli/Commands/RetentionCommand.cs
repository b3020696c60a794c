using System.ComponentModel;
using System.Globalization;
using GaitSeat.Cli.Privacy;
using GaitSeat.Pipeline.Privacy;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Erases sessions that are older than they are to be kept, on the same way as a rider who is forgotten.</summary>
public sealed class RetentionCommand(AnsiConsoles consoles) : AsyncCommand<RetentionCommand.Arguments>
{
    private const int MostDays = 36_500;

    public sealed class Arguments : ErasureArguments
    {
        [CommandOption("--keep-days <DAYS>", isRequired: true)]
        [Description("Sessions are kept this many days; older ones go.")]
        public int KeepDays { get; init; }

        public override ValidationResult Validate() => KeepDays is < 1 or > MostDays
            ? ValidationResult.Error(string.Create(CultureInfo.InvariantCulture, $"--keep-days {KeepDays}: 1 to {MostDays} is allowed."))
            : base.Validate();
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var dataset = Datasets.OpenExisting(settings.Dataset);
        var run = new ForgetRun(dataset, settings.QueueOrVariable, TimeProvider.System, ProcessCommand.SoftwareVersion);
        var lines = new ErasureLines(consoles);
        if (run.Unfinished(cancellationToken) is { } begun)
        {
            lines.Write("An erasure that was begun is not finished:", begun, settings.Yes);
            if (!settings.Yes) return ExitCodes.SomeSetAside;
            var finished = run.Do(begun, settings.By, cancellationToken);
            lines.Write(begun, finished);
            if (!finished.IsClean) return ExitCodes.Failed;
        }

        var old = OldClips.Find(dataset, settings.KeepDays, Today.Local);
        if (old.Undated > 0) consoles.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{old.Undated} clips have no session_date in the sheet; how old they are is not known, and they stay."));
        if (old.ClipKeys.Count == 0)
        {
            consoles.RawOut.WriteLine(string.Create(CultureInfo.InvariantCulture, $"No session before {old.Before:yyyy-MM-dd}."));
            return ExitCodes.Done;
        }

        var plan = await run.PlanAsync(null, old.ClipKeys, settings.Clips, settings.Originals, cancellationToken);
        lines.Write(string.Create(CultureInfo.InvariantCulture, $"{old.Sessions} sessions before {old.Before:yyyy-MM-dd}:"), plan, settings.Yes);
        if (!settings.Yes) return ExitCodes.Done;
        var result = run.Do(plan, settings.By, cancellationToken);
        lines.Write(plan, result);
        return result.IsClean ? ExitCodes.Done : ExitCodes.Failed;
    }
}
