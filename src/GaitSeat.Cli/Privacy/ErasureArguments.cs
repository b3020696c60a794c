using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Privacy;

/// <summary>What the commands that erase have in common.</summary>
public class ErasureArguments : LoggedArguments
{
    [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
    [Description("The dataset to erase from.")]
    public string Dataset { get; init; } = "";

    [CommandOption("--clips <FOLDER>")]
    [Description("The folder with the source clips and their sheet: they are listed, and go with --originals.")]
    public string? Clips { get; init; }

    [CommandOption("--originals")]
    [Description("With --clips: delete the source clips and their rows of sheet and consent file, too.")]
    public bool Originals { get; init; }

    [CommandOption("-q|--queue <CONNECTION>")]
    [Description("PostgreSQL connection string of a queue shared by several workers; also read from GAITSEAT_QUEUE.")]
    public string? Queue { get; init; }

    [CommandOption("--yes")]
    [Description("Do it. Without it nothing is changed, and what would go is listed.")]
    public bool Yes { get; init; }

    internal string? QueueOrVariable => Queue ?? Environment.GetEnvironmentVariable("GAITSEAT_QUEUE");

    public override ValidationResult Validate() => Originals && Clips is null
        ? ValidationResult.Error("--originals: name the folder they lie in with --clips.")
        : ValidationResult.Success();
}
