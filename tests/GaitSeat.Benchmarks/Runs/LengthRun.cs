using System.Globalization;
using GaitSeat.Footage;

namespace GaitSeat.Benchmarks;

/// <summary>Whether memory grows with a clip's length: the real program over clips of different lengths, in small pictures unless told otherwise, so that long ones end in time.</summary>
internal static class LengthRun
{
    private const int SmallPx = 360;

    /// <param name="folder">Where footage is made once and kept.</param>
    /// <param name="lengths">Each as <c>minutes:empty</c> or <c>minutes:empty:height</c>, where <c>empty</c> says how many empty pieces follow a piece of trot.</param>
    public static async Task<int> RunAsync(string folder, IReadOnlyList<string> lengths, TextWriter output, CancellationToken ct)
    {
        var footage = new LessonFootage(FfmpegTools.Locate(), folder);
        output.WriteLine("| height | length | rider in view | whole run | processor | peak memory: program, largest FFmpeg |");
        output.WriteLine("|---|---|---|---|---|---|");
        foreach (var length in lengths)
        {
            var words = length.Split(':');
            var (minutes, empty) = (double.Parse(words[0], CultureInfo.InvariantCulture), int.Parse(words[1], CultureInfo.InvariantCulture));
            var heightPx = words.Length > 2 ? int.Parse(words[2], CultureInfo.InvariantCulture) : SmallPx;
            var clips = await footage.ClipAsync($"length-{words[0]}min-{empty}-{heightPx}p", heightPx, empty, minutes * 60, ct);
            var dataset = Directory.CreateTempSubdirectory("gaitseat-length-").FullName;
            var pipeline = Path.Combine(dataset, "p.yaml");
            await File.WriteAllTextAsync(pipeline, "output:\n  overlay: false\n  plot: false\n", ct);
            var run = await ProgramRun.OfAsync(ct, "process", clips, "--dataset", Path.Combine(dataset, "dataset"), "--pipeline", pipeline);
            Directory.Delete(dataset, recursive: true);
            if (run.ExitCode != 0) throw new InvalidOperationException($"the program ended with {run.ExitCode}: {run.Out}");
            var share = LessonFootage.TrotSeconds / (LessonFootage.TrotSeconds + (empty * LessonFootage.EmptySeconds));
            output.WriteLine($"| {heightPx} px | {minutes:0.#} min | {share * 100:0} % | {run.Seconds:0} s | {run.ProcessorSeconds:0} s | {run.PeakMegabytes} MB, {run.ToolPeakMegabytes} MB |");
        }

        return 0;
    }
}
