using BenchmarkDotNet.Attributes;
using GaitSeat.Model;
using GaitSeat.Motion;
using GaitSeat.Store;

namespace GaitSeat.Benchmarks;

/// <summary>Writing what a minute of rising trot came to: seven Parquet files, forced to disk.</summary>
[MemoryDiagnoser]
public class TableKernels
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-tables-").FullName;
    private Dataset? _dataset;
    private ClipRecord? _record;

    [GlobalSetup]
    public void Prepare()
    {
        var sightings = MadeRide.Sightings();
        var motion = MotionAnalysis.Analyse(sightings, BodyLengths.Unknown, new());
        var info = new ClipInfo("/clips/x.mp4", MadeRide.Seconds, 1280, 720, MadeRide.RateHz, "h264", "yuv420p", 0, false, new("mov,mp4", 0, 1, 30000, 0, "bt709", ColourMatrix.Bt709));
        _dataset = Dataset.Open(_folder);
        _record = new(
            new(new('a', 64), "x.mp4", new('b', 64), new('c', 64), "0", Provenance.CurrentSchemaVersion), null, info, ClipStatus.Measured, null, null, sightings, motion, [], motion.LeftOut, sightings.Count);
    }

    [GlobalCleanup]
    public void Remove() => Directory.Delete(_folder, recursive: true);

    [Benchmark(Description = "tables of a minute written, with tracks")]
    public Task WithTracks() => _dataset!.WriteAsync(_record!, withTracks: true, CancellationToken.None);

    [Benchmark(Description = "tables of a minute written, without")]
    public Task WithoutTracks() => _dataset!.WriteAsync(_record!, withTracks: false, CancellationToken.None);
}
