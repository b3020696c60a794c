using System.ComponentModel;
using System.Globalization;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Prints who saw and exported what.</summary>
public sealed class AuditCommand(AnsiConsoles consoles) : Command<AuditCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset whose audit.jsonl is read.")]
        public string Dataset { get; init; } = "";

        [CommandOption("--rider <NAME>")]
        [Description("Only lines with this rider in them.")]
        public string? Rider { get; init; }
    }

    public override int Execute(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var entries = new AuditLog(Datasets.OpenExisting(settings.Dataset).Folder).Read().Where(e => settings.Rider is null || e.Riders.Contains(settings.Rider)).ToArray();
        foreach (var e in entries)
        {
            consoles.RawOut.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{e.At:yyyy-MM-dd HH:mm:ss}Z {e.Who} {e.Act} {e.What}{(e.Where is null ? "" : $" to {e.Where}")}; {e.Clips.Count} clips{(e.Riders.Count > 0 ? ": " + string.Join(", ", e.Riders) : "")}"));
        }

        if (entries.Length == 0) consoles.Error.WriteLine("Nothing is logged.");
        return ExitCodes.Done;
    }
}
