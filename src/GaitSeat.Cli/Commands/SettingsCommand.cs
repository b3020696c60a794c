using GaitSeat.Pipeline.Settings;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Prints the standard pipeline file: every setting with its default, meaning and range.</summary>
public sealed class SettingsCommand(AnsiConsoles consoles) : Command
{
    public override int Execute(CommandContext context, CancellationToken cancellationToken)
    {
        consoles.RawOut.Write(Text());
        return ExitCodes.Done;
    }

    /// <summary>The text of <c>pipelines/standard.yaml</c>.</summary>
    public static string Text() =>
        "# The standard pipeline: every setting at its default. Copy it, keep the lines you change, and name it with --pipeline.\n" +
        SettingsWriter.Write(new PipelineSettings(), SettingDocs.Load(AppContext.BaseDirectory));
}
