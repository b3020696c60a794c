using System.Globalization;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Studio;
using Spectre.Console;

namespace GaitSeat.Cli.Accuracy;

/// <summary>The sets the studio can make.</summary>
public enum SetName
{
    /// <summary>Side-on within 15 deg, good light, a rider of 200 px and more.</summary>
    Narrow,

    /// <summary>The whole range of footage people bring.</summary>
    Wide,
}

/// <summary>A set of made clips with truth; a second call with the same set, seed and count finds them.</summary>
/// <param name="count">How many clips; null takes the set's usual number.</param>
internal sealed class MadeSet(SetName set, int seed, int? count)
{
    private const int ClipsAtOnce = 2;
    private const int UsualNarrow = 24, UsualWide = 100;

    private readonly int _count = count ?? (set == SetName.Wide ? UsualWide : UsualNarrow);

    /// <summary>What its folder is called: another drawing makes other clips, so it is not the same set.</summary>
    public string Name => string.Create(CultureInfo.InvariantCulture, $"{set.ToTerm()}-{seed}-{_count}-v{StudioRenderer.DrawingVersion}");

    public async Task MakeAsync(string folder, FfmpegTools ffmpeg, IAnsiConsole console, CancellationToken ct)
    {
        var scripts = set == SetName.Wide ? WideSet.Scripts(seed, _count) : AccuracySet.Scripts(seed, _count);
        var renderer = new StudioRenderer(ffmpeg);
        var digits = Math.Max(2, scripts.Count.ToString(CultureInfo.InvariantCulture).Length);
        // Side by side, so that the cores have work while a clip begins and while its encoder ends.
        var all = new ParallelOptions { MaxDegreeOfParallelism = ClipsAtOnce, CancellationToken = ct };
        await Parallel.ForAsync(0, scripts.Count, all, async (i, cancel) =>
        {
            var number = (i + 1).ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
            var name = $"{(set == SetName.Wide ? 'w' : 'a')}{number}-{scripts[i].Gait.ToTerm().Replace('_', '-')}";
            if (File.Exists(TruthFile.PathFor(folder, name))) return;
            console.MarkupLineInterpolated($"[grey]making {name}[/]");
            await renderer.RenderAsync(scripts[i], folder, name, cancel);
        });
    }
}
