using BenchmarkDotNet.Attributes;
using GaitSeat.Model;
using GaitSeat.Motion;
using GaitSeat.Motion.Gaits;
using GaitSeat.Motion.Signals;
using GaitSeat.Motion.Strides;
using GaitSeat.Motion.Tracks;
using GaitSeat.Motion.View;

namespace GaitSeat.Benchmarks;

/// <summary>The maths of a minute of rising trot at 30 frames a second.</summary>
[MemoryDiagnoser]
public class MotionKernels
{
    private const double GridHz = 100, CutoffHz = 8, Seconds = 60;

    private readonly MotionSettings _settings = new();
    private readonly Sightings _sightings = MadeRide.Sightings(Seconds);
    private readonly double[] _signal = [.. Enumerable.Range(0, (int)(Seconds * GridHz)).Select(i => Math.Sin(i * 0.17) + (0.1 * Math.Sin(i * 2.9)))];
    private SegmentSignals? _signals;
    private RawSpell? _spell;

    [GlobalSetup]
    public void Prepare()
    {
        var facing = FacingFill.Steady(_sightings);
        var course = TurnCourse.Of(_sightings, facing, _settings.View);
        var verdict = FrameVerdict.Judge(_sightings, course, _settings.Segment);
        var segment = Segmenter.Cut(_sightings, verdict, facing, _settings.Segment, []).MaxBy(s => s.Count)!;
        _signals = new SegmentBuilder(_sightings, verdict, course, _settings).Build(segment)!.Value.Signals;
        _spell = new SpellFinder(_settings.Gait).Find(_signals).Where(s => s.Gait == Gait.RisingTrot).MaxBy(s => s.EndSeconds - s.StartSeconds)!;
        if (Strides() < 60) throw new InvalidOperationException($"{Strides()} strides were cut in a minute of trot");
    }

    [Benchmark(Description = "filter, one signal of a minute (6000 samples)")]
    public double[] Filter() => JerkSmoother.Smooth(_signal, GridHz, CutoffHz);

    [Benchmark(Description = "strides of a minute cut")]
    public int Strides() => new StrideCutter(_settings.Stride).Cut(_signals!, _spell!, 0, 0).Count;

    [Benchmark(Description = "all maths of a minute")]
    public int Everything() => MotionAnalysis.Analyse(_sightings, BodyLengths.Unknown, _settings).Strides.Count;
}
