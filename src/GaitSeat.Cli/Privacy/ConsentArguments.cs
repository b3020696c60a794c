using System.ComponentModel;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Privacy;

/// <summary>What the commands have in common that leave riders out who did not agree.</summary>
public abstract class ConsentArguments : LoggedArguments
{
    internal const string ClipsHelp = "The folder with the clips: its sheet and consent file as they are today say who agreed. Without it what the dataset recorded when it last read them.";

    [CommandOption("--clips <FOLDER>")]
    [Description(ClipsHelp)]
    public string? Clips { get; init; }
}
