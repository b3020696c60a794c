using GaitSeat.Model;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Reads both models' points from a frame. N workers with their own one-thread sessions; calls with different worker numbers may run at once.
/// The answer depends on nothing but the frame and the box, so the order of frames does not matter.
/// </summary>
public sealed class BodyPointReader : IDisposable
{
    private const int InputPx = 256;

    private static readonly InputFormat Bytes = new(false, false, [1, 1, 1], [0, 0, 0], 0);
    private static readonly InputFormat Unit = new(false, false, [1 / 255f, 1 / 255f, 1 / 255f], [0, 0, 0], 0);

    private readonly Worker[] _workers;
    private readonly BodyPointSettings _settings;

    /// <param name="thunder">MoveNet Thunder.</param>
    /// <param name="heavy">BlazePose heavy; null to go without heel and toe.</param>
    /// <param name="workers">How many frames at once.</param>
    public BodyPointReader(ModelFile thunder, ModelFile? heavy, BodyPointSettings settings, int workers)
    {
        ArgumentNullException.ThrowIfNull(thunder);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentOutOfRangeException.ThrowIfLessThan(workers, 1);
        _settings = settings;
        _workers = [.. Enumerable.Range(0, workers).Select(_ => new Worker(new(thunder, 1), heavy is null ? null : new(heavy, 1)))];
    }

    public int Workers => _workers.Length;

    /// <param name="worker">0-based; two calls at a time must not share one.</param>
    /// <param name="frame">The picture.</param>
    /// <param name="riderBox">Where the rider is, px of the picture.</param>
    public RawPose Read(int worker, Frame frame, BoxPx riderBox)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var w = _workers[worker];
        var first = ReadFirst(w, frame, BodyCrops.Around(riderBox, _settings.BoxCropFactor, InputPx));
        var crop = w.Second is null ? null : BodyCrops.AlongTorso(first, _settings.TorsoCropFactor, InputPx);
        return new(riderBox, first, crop is { } c ? ReadSecond(w, frame, c) : null);
    }

    public void Dispose()
    {
        foreach (var w in _workers)
        {
            w.First.Dispose();
            w.Second?.Dispose();
        }
    }

    private static RawPoints ReadFirst(Worker worker, Frame frame, CropTransform crop)
    {
        CropSampler.Fill(frame, crop, Bytes, worker.Input);
        var o = worker.First.Run(worker.Input, 1);
        var maps = new MoveNetMaps(o["kpt_heatmap"], o["center"], o["kpt_regress"], o["kpt_offset"], InputPx / MoveNetDecoder.CellPx);
        return MoveNetDecoder.Decode(maps, crop);
    }

    private RawPoints ReadSecond(Worker worker, Frame frame, CropTransform crop)
    {
        CropSampler.Fill(frame, crop, Unit, worker.Input);
        var o = worker.Second!.Run(worker.Input, 1);
        return BlazePoseDecoder.Decode(o["ld_3d"], o["heatmap"], crop, _settings.RefinePeakMinimum);
    }

    private sealed class Worker(OnnxSession first, OnnxSession? second)
    {
        public OnnxSession First { get; } = first;

        public OnnxSession? Second { get; } = second;

        public float[] Input { get; } = new float[3 * InputPx * InputPx];
    }
}
