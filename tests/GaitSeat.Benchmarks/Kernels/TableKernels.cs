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
        var sightings = MadeRide.Sightings(60);
        _dataset = Dataset.Open(_folder);
        _record = MadeRide.Record(sightings, MotionAnalysis.Analyse(sightings, BodyLengths.Unknown, new()));
    }

    [GlobalCleanup]
    public void Remove() => Directory.Delete(_folder, recursive: true);

    [Benchmark(Description = "tables of a minute written, with tracks")]
    public Task WithTracks() => _dataset!.WriteAsync(_record!, withTracks: true, CancellationToken.None);

    [Benchmark(Description = "tables of a minute written, without")]
    public Task WithoutTracks() => _dataset!.WriteAsync(_record!, withTracks: false, CancellationToken.None);
}
