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
                var file = Places.Models().Ensure(source);
                return $"{file.Sha256[..12]}, {Verified(file, InferenceDevice.Cpu)}{(InferenceDevices.IsBuiltIn(InferenceDevice.Gpu) ? $"; {Verified(file, InferenceDevice.Gpu)}" : "")}";
            });
        }

        ok &= Line("pipeline", () => File.Exists(Places.StandardPipeline) ? Places.StandardPipeline : throw new FileNotFoundException($"{Places.StandardPipeline} is missing: restore it from the repository"));
        return ok ? ExitCodes.Done : ExitCodes.NotInstalled;
    }

    private static string Verified(ModelFile file, InferenceDevice wanted)
    {
        var found = ModelStore.Verify(file, wanted).Require();
        return found.Device == wanted
            ? string.Create(CultureInfo.InvariantCulture, $"on the {wanted.ToString().ToLowerInvariant()} greatest difference from its reference values {found.Worst.Greatest:0.0e0}")
            : "no gpu found that CUDA can use";
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
