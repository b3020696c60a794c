using System.ComponentModel;
using GaitSeat.Cli.Privacy;
using GaitSeat.Pipeline.Privacy;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Erases a rider from a dataset, and proves it by a search.</summary>
public sealed class ForgetCommand(AnsiConsoles consoles) : AsyncCommand<ForgetCommand.Arguments>
{
    public sealed class Arguments : ErasureArguments
    {
        [CommandArgument(0, "<rider>")]
        [Description("The rider's pseudonym, as the session sheet writes it.")]
        public string Rider { get; init; } = "";

        [CommandOption("--allow-again")]
        [Description("Instead: let a rider who was forgotten be measured again, since they agreed anew.")]
        public bool AllowAgain { get; init; }
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var dataset = Datasets.OpenExisting(settings.Dataset);
        if (settings.AllowAgain) return Allow(dataset, settings.Rider);
        var run = new ForgetRun(dataset, settings.QueueOrVariable, TimeProvider.System, ProcessCommand.SoftwareVersion);
        var lines = new ErasureLines(consoles);
        if (run.Unfinished(cancellationToken) is { } begun && (begun.Order.Rider != settings.Rider || settings.Yes))
        {
            lines.Write("An erasure that was begun is not finished:", begun, settings.Yes);
            if (!settings.Yes) return ExitCodes.SomeSetAside;
            var finished = run.Do(begun, settings.By, cancellationToken);
            lines.Write(begun, finished);
            if (!finished.IsClean) return ExitCodes.Failed;
        }

        var plan = await run.PlanAsync(settings.Rider, [], settings.Clips, settings.Originals, cancellationToken);
        var known = ForgottenList.Read(dataset.Folder).HasRider(settings.Rider);
        // Of a rider of whom nothing was measured yet the record of consents tells all the same.
        var recorded = ConsentRecord.Read(dataset.Folder).Of(settings.Rider, Today.Local) is not null;
        // A word that only stands in names of files is nobody's pseudonym, and these files are other riders'.
        if (plan.Order.ClipKeys.Count == 0 && plan.SheetRows == 0 && !known && !recorded)
            throw new SeasonException($"there is no rider '{settings.Rider}' in '{settings.Dataset}' or the sheet; pseudonyms are taken letter by letter, capitals too");
        if (plan.IsEmpty && plan.Sources.Count == 0 && plan.SheetRows == 0 && !recorded)
        {
            consoles.RawOut.WriteLine($"Nothing of '{settings.Rider}' is there; the rider was forgotten.");
            return ExitCodes.Done;
        }

        lines.Write($"Of rider '{settings.Rider}':", plan, settings.Yes);
        if (!settings.Yes) return ExitCodes.Done;
        var result = run.Do(plan, settings.By, cancellationToken);
        lines.Write(plan, result);
        return result.IsClean ? ExitCodes.Done : ExitCodes.Failed;
    }

    private int Allow(Dataset dataset, string rider)
    {
        var allowed = ForgottenList.Read(dataset.Folder).Allow(rider);
        consoles.RawOut.WriteLine(allowed ? $"'{rider}' is measured again by the next run, as far as the sheet agrees." : $"'{rider}' was not forgotten.");
        return ExitCodes.Done;
    }
}
