using System.Globalization;
using GaitSeat.Footage;
using GaitSeat.Vision.Models;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Tells what is installed and what is not, and runs each model on a fixed input against its reference values.</summary>
public sealed class CheckCommand(AnsiConsoles consoles) : Command
{
    public override int Execute(CommandContext context, CancellationToken cancellationToken)
    {
        var ok = Line("FFmpeg", () => FfmpegTools.Locate() is var f ? $"{f.Version} at {f.FfmpegPath}" : "");
        foreach (var source in ModelCatalogue.All)
        {
            ok &= Line(source.Name, () =>
            {
                var store = Places.Models();
                var file = store.Ensure(source);
                var worst = ModelStore.Verify(file).Require().Worst.Greatest;
                return string.Create(CultureInfo.InvariantCulture, $"{file.Sha256[..12]}, greatest difference from its reference values {worst:0.0e0}");
            });
        }

        ok &= Line("pipeline", () => File.Exists(Places.StandardPipeline) ? Places.StandardPipeline : throw new FileNotFoundException($"{Places.StandardPipeline} is missing: restore it from the repository"));
        return ok ? ExitCodes.Done : ExitCodes.NotInstalled;
    }

    private bool Line(string what, Func<string> find)
    {
        try
        {
            consoles.Out.MarkupLineInterpolated($"[green]ok[/]       {what}: {find()}");
            return true;
        }
        catch (Exception e) when (e is FfmpegNotFoundException or ModelException or FileNotFoundException)
        {
            consoles.Out.MarkupLineInterpolated($"[red]missing[/]  {what}: {e.Message}");
            return false;
        }
    }
}
