using System.Globalization;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Studio;
using Spectre.Console;

namespace GaitSeat.Cli.Accuracy;

/// <summary>Makes a set of clips with truth; a second call with the same seed and count finds them.</summary>
internal static class MadeSet
{
    public static async Task MakeAsync(IReadOnlyList<ClipScript> scripts, string folder, string prefix, FfmpegTools ffmpeg, IAnsiConsole console, CancellationToken ct)
    {
        var renderer = new StudioRenderer(ffmpeg);
        var digits = Math.Max(2, scripts.Count.ToString(CultureInfo.InvariantCulture).Length);
        for (var i = 0; i < scripts.Count; i++)
        {
            var number = (i + 1).ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
            var name = $"{prefix}{number}-{scripts[i].Gait.ToTerm().Replace('_', '-')}";
            if (File.Exists(TruthFile.PathFor(folder, name))) continue;
            console.MarkupLineInterpolated($"[grey]making {name}[/]");
            await renderer.RenderAsync(scripts[i], folder, name, ct);
        }
    }
}
