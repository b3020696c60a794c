using System.ComponentModel;
using System.Globalization;
using GaitSeat.Cli.Privacy;
using GaitSeat.Pipeline.Privacy;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Erases what is older than it is to be kept: sessions on the same way as a rider who is forgotten, pictures and copies as files.</summary>
public sealed class RetentionCommand(AnsiConsoles consoles) : AsyncCommand<RetentionCommand.Arguments>
{
    private const int MostDays = 36_500;

    public sealed class Arguments : ErasureArguments
    {
        [CommandOption("--keep-days <DAYS>")]
        [Description("Sessions are kept this many days; older ones go. Without it the part 'retention' of the pipeline file tells, for sessions, pictures and the copies of the review page.")]
        public int? KeepDays { get; init; }

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("The pipeline file that says how long things are kept. Without it the defaults hold: sessions and pictures without end, copies 30 days.")]
        public string? Pipeline { get; init; }

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

        var keep = settings.KeepDays is { } days ? new RetentionSettings { SessionDays = days, ReviewCopyDays = 0 } : PipelineFile.ReadOrDefaults(settings.Pipeline).Retention;
        if (keep is { SessionDays: 0, PictureDays: 0, ReviewCopyDays: 0 }) consoles.RawOut.WriteLine("Everything is kept without end: set 'retention' in the pipeline file, or give --keep-days.");
        var sessions = keep.SessionDays > 0 ? await SessionsAsync(settings, keep.SessionDays, dataset, run, lines, cancellationToken) : ExitCodes.Done;
        // After the sessions, whose pictures and copies are gone by then.
        Files(settings, OldFiles.Find(dataset, keep, Today.Local));
        return sessions;
    }

    private async Task<int> SessionsAsync(Arguments settings, int keepDays, Dataset dataset, ForgetRun run, ErasureLines lines, CancellationToken cancellationToken)
    {
        var old = OldClips.Find(dataset, keepDays, Today.Local);
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

    private void Files(Arguments settings, IReadOnlyList<OldFile> files)
    {
        foreach (var kind in files.GroupBy(f => f.Kind))
        {
            // Logged first, as all that changes what is kept.
            var count = string.Create(CultureInfo.InvariantCulture, $"{kind.Count()} {kind.Key} files");
            if (settings.Yes) new AuditLog(settings.Dataset).Add(TimeProvider.System.GetUtcNow(), settings.By, "erased old files", count, [], [], null);
            if (settings.Yes) foreach (var file in kind) File.Delete(file.Path);
            consoles.RawOut.WriteLine(settings.Yes ? $"{count}: erased." : $"{count} are older than they are kept. Nothing was changed. To do it: --yes.");
        }
    }
}
