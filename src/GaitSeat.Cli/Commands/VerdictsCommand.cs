using System.ComponentModel;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Takes a coach's verdicts from a CSV into the dataset. All of the sheet or, where a line is wrong, nothing.</summary>
public sealed class VerdictsCommand(AnsiConsoles consoles) : AsyncCommand<VerdictsCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<sheet>")]
        [Description("A CSV with clip_file, spell, fault, verdict (agrees, does_not, cannot_tell), judge, judged_at and, where wanted, drawn and note.")]
        public string Sheet { get; init; } = "";

        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset that was judged.")]
        public string Dataset { get; init; } = "";

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash that was judged, where the dataset holds several runs.")]
        public string? Run { get; init; }
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var dataset = Datasets.OpenExisting(settings.Dataset);
        var result = VerdictSheet.Read(settings.Sheet, dataset, settings.Run, TimeProvider.System.GetUtcNow());
        foreach (var problem in result.Errors) consoles.Error.WriteLine($"{settings.Sheet}: {problem}");
        foreach (var problem in result.Warnings) consoles.Error.WriteLine($"{settings.Sheet}: {problem}");
        if (result.Errors.Count > 0)
        {
            consoles.Error.WriteLine($"{result.Errors.Count} errors; nothing was taken in. Correct the lines named and import again.");
            return ExitCodes.WrongUsage;
        }

        var added = await new VerdictStore(dataset).AppendAsync(result.Verdicts, cancellationToken);
        consoles.Out.MarkupLineInterpolated($"{added} verdicts added, {result.Verdicts.Count - added} were there already, {result.NotJudged} lines are not filled in yet.");
        return ExitCodes.Done;
    }
}
