using System.ComponentModel;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Writes the session sheet of a folder, or adds the clips it lacks; what is in it stays as it is.</summary>
public sealed class SheetCommand(AnsiConsoles consoles) : Command<SheetCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<folder>")]
        [Description("The folder with the clips.")]
        public string Folder { get; init; } = "";
    }

    public override int Execute(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var clips = ClipFolder.List(settings.Folder).Select(c => Path.GetFileName(c)!).ToArray();
        var path = Path.Combine(settings.Folder, SessionSheet.FileName);
        if (File.Exists(path))
        {
            var added = SessionSheet.Update(path, clips);
            consoles.Out.MarkupLineInterpolated($"{path}: {added} of {clips.Length} clips added; the other rows are as they were.");
        }
        else
        {
            SessionSheet.WriteTemplate(path, clips);
            consoles.Out.MarkupLineInterpolated($"{path}: written with {clips.Length} clips. Fill in pseudonyms, rider_stature_cm and consent (yes/no).");
        }

        return ExitCodes.Done;
    }
}
