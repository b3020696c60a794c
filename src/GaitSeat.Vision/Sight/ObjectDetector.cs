using GaitSeat.Model;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Sight;

/// <summary>Finds persons and horses in a frame with NanoDet. Several workers, each for one caller at a time.</summary>
public sealed class ObjectDetector : IDisposable
{
    // The detector's published normalisation, B, G, R (mean and standard deviation of its training pictures).
    private static readonly float[] Mean = [103.53f, 116.28f, 123.675f];
    private static readonly float[] Deviation = [57.375f, 57.12f, 58.395f];

    private static readonly (int StridePx, string Scores, string Boxes)[] Levels =
        [(8, "scores_8", "boxes_8"), (16, "scores_16", "boxes_16"), (32, "scores_32", "boxes_32")];

    private static readonly InputFormat Format = new(
        Planar: true, BlueFirst: true, Gain: Array.ConvertAll(Deviation, d => 1 / d),
        Offset: [.. Mean.Zip(Deviation, (m, d) => -m / d)], Outside: 0);

    private readonly Worker[] _workers;
    private readonly DetectorSettings _settings;

    /// <param name="nanodet">The detector's weights.</param>
    /// <param name="settings">Thresholds.</param>
    /// <param name="workers">Sessions side by side, each of one thread.</param>
    /// <param name="device">What to run on if it is there.</param>
    public ObjectDetector(ModelFile nanodet, DetectorSettings settings, int workers = 1, InferenceDevice device = InferenceDevice.Cpu)
    {
        ArgumentNullException.ThrowIfNull(nanodet);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentOutOfRangeException.ThrowIfLessThan(workers, 1);
        _settings = settings;
        _workers = [.. OnnxSession.Several(nanodet, workers, device).Select(session => new Worker(session))];
    }

    public int Workers => _workers.Length;

    /// <summary>What it runs on.</summary>
    public InferenceDevice Device => _workers[0].Session.Device;

    /// <summary>Persons and horses of a frame, best first.</summary>
    /// <param name="worker">0-based; two calls at a time must not share one.</param>
    /// <param name="scoreMinimum">Lowest score kept, 0..1; null for <see cref="DetectorSettings.ScoreMinimum"/>.</param>
    public IReadOnlyList<Detection> Detect(int worker, Frame frame, double? scoreMinimum = null)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var (session, input) = _workers[worker];
        var crop = CropTransform.Letterbox(frame.WidthPx, frame.HeightPx, NanoDetDecoder.InputPx);
        CropSampler.Fill(frame, crop, Format, input);
        var outputs = session.Run(input, 1);
        var found = new List<Detection>();
        foreach (var (stride, scores, boxes) in Levels)
            NanoDetDecoder.Decode(new(outputs[scores], outputs[boxes], stride), crop, scoreMinimum ?? _settings.ScoreMinimum, found);
        return NanoDetDecoder.Distinct(found, _settings.OverlapMaximum);
    }

    public void Dispose()
    {
        foreach (var worker in _workers) worker.Session.Dispose();
    }

    private sealed record Worker(OnnxSession Session, float[] Input)
    {
        public Worker(OnnxSession session)
            : this(session, new float[session.InputLength])
        {
        }
    }
}
