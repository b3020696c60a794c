using System.ComponentModel;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Privacy;

/// <summary>What the commands have in common that stand in the audit log.</summary>
public abstract class LoggedArguments : CommandSettings
{
    [CommandOption("--by <NAME>")]
    [Description("Pseudonym of who asks, for the audit log.")]
    [DefaultValue("coach")]
    public string By { get; init; } = "coach";
}
