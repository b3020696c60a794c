using System.Diagnostics;
using System.Globalization;
using GaitSeat.Model;
using GaitSeat.Motion;
using GaitSeat.Store;

namespace GaitSeat.Benchmarks;

/// <summary>What the maths and the tables hold of long rides, without video and models: made-up sightings of rising trot throughout. Lengths in rising order, because a process's high-water mark never falls.</summary>
internal static class MathsLengthRun
{
    public static async Task<int> RunAsync(IReadOnlyList<string> minutes, TextWriter output, CancellationToken ct)
    {
        output.WriteLine("| trot | frames | strides | maths | tables | most memory so far |");
        output.WriteLine("|---|---|---|---|---|---|");
        foreach (var length in minutes.Select(m => double.Parse(m, CultureInfo.InvariantCulture)))
        {
            var sightings = MadeRide.Sightings(length * 60);
            var clock = Stopwatch.StartNew();
            var motion = MotionAnalysis.Analyse(sightings, BodyLengths.Unknown, new());
            var maths = clock.Elapsed;
            var folder = Directory.CreateTempSubdirectory("gaitseat-maths-").FullName;
            clock.Restart();
            await Dataset.Open(folder).WriteAsync(MadeRide.Record(sightings, motion), withTracks: true, ct);
            var tables = clock.Elapsed;
            Directory.Delete(folder, recursive: true);
            using var self = Process.GetCurrentProcess();
            output.WriteLine($"| {length} min | {sightings.Count} | {motion.Strides.Count} | {maths.TotalSeconds:0.0} s | {tables.TotalSeconds:0.0} s | {self.PeakWorkingSet64 / 1_000_000} MB |");
        }

        return 0;
    }
}
