using System.Diagnostics;
using GaitSeat.Model;

namespace GaitSeat.Store.Tests;

/// <summary>A season of a size that nobody has: 1 000 000 strides of 500 riders in 10 000 clips. Takes many minutes, so only with GAITSEAT_LONG=1; prints how long each step took (docs/dataset.md). Keeps the dataset where GAITSEAT_KEEP names a folder.</summary>
public sealed class MillionStridesTests(ITestOutputHelper output)
{
    private const int Riders = 500;
    private const int ClipsPerRider = 20;
    private const int StridesPerClip = 100;

    [Fact]
    public async Task Aggregate_AfterCompaction_CountsEveryStride()
    {
        if (Environment.GetEnvironmentVariable("GAITSEAT_LONG") != "1") Assert.Skip("Set GAITSEAT_LONG=1 for the long checks.");
        using var folder = new TemporaryFolder();
        var path = Environment.GetEnvironmentVariable("GAITSEAT_KEEP") ?? folder.Path;
        var clock = Stopwatch.StartNew();
        await WriteAsync(Dataset.Open(path));
        output.WriteLine($"written: {clock.Elapsed.TotalSeconds:0} s, {Megabytes(Path.Combine(path, "strides")):0} MB of strides");
        clock.Restart();
        var summary = Compactor.Run(path, TimeProvider.System, CancellationToken.None);
        output.WriteLine($"compacted: {clock.Elapsed.TotalSeconds:0} s, {summary.Written} parts, strides {Megabytes(Path.Combine(path, "compact", "strides")):0} MB, all {summary.SourceBytes / 1e6:0} to {summary.Bytes / 1e6:0} MB");
        clock.Restart();
        // The folder's time tells only once it is older than the clock's grain.
        Thread.Sleep(TimeSpan.FromSeconds(3));
        Compactor.Run(path, TimeProvider.System, CancellationToken.None);
        output.WriteLine($"compacted again: {clock.Elapsed.TotalSeconds - 3:0.0} s");
        clock.Restart();
        using var query = AskedQuery.Open(path, null, null);
        var opened = clock.Elapsed;
        var answer = query.Ask("SELECT rider, count(*) AS n, avg(rise_height_cm) AS rise, stddev_samp(thigh_angle_sit_deg) AS sd FROM strides GROUP BY rider ORDER BY rider", 1000);
        output.WriteLine($"opened in {opened.TotalMilliseconds:0} ms, answered after {clock.Elapsed.TotalMilliseconds:0} ms");
        Assert.Equal(Riders, answer.Rows.Count);
        Assert.Equal((long)ClipsPerRider * StridesPerClip, answer.Rows[0][1]);
    }

    private static Task WriteAsync(Dataset dataset) => Parallel.ForAsync(0, Riders * ClipsPerRider, async (clip, ct) =>
    {
        var random = new Random(clip);
        var rider = clip / ClipsPerRider;
        var session = Made.Session() with { Rider = $"R{rider:000}", Horse = $"H{clip % 200:000}", SessionDate = new DateOnly(2026, 3, 1).AddDays(clip % ClipsPerRider), LeatherCm = 38 + rider % 20 * 0.5 };
        var key = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(BitConverter.GetBytes(clip)));
        var strides = Enumerable.Range(1, StridesPerClip).Select(n => Stride(n, random)).ToArray();
        await dataset.WriteAsync(Made.Measured(key, session: session) with { Motion = Made.Motion() with { Strides = strides } }, withTracks: false, ct);
    });

    private static Stride Stride(int number, Random random)
    {
        var measures = new MeasureSet();
        foreach (var m in MeasureCatalogue.All) measures[m.Measure] = new(Math.Round(10 + 5 * random.NextDouble(), 4), Math.Round(0.5 + random.NextDouble(), 4));
        return new(2, number, Facing.Right, 3 + number * 0.7, 3.4 + number * 0.7, 3.7 + number * 0.7, 0.8, "good", measures);
    }

    private static double Megabytes(string folder) => new DirectoryInfo(folder).EnumerateFiles("*.parquet", SearchOption.AllDirectories).Sum(f => f.Length) / 1e6;
}
