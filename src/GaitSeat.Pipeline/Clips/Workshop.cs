using GaitSeat.Footage;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Vision.Models;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Clips;

/// <summary>The tools a run shares over its clips: FFmpeg and the loaded models. Loaded once, when first needed.</summary>
public sealed class Workshop : IDisposable
{
    private readonly Lazy<ObjectDetector> _detector;
    private readonly Lazy<BodyPointReader> _points;

    private Workshop(FfmpegTools ffmpeg, PipelineSettings settings, ModelFile detector, FirstModel bodyPoints, ModelFile torso)
    {
        Ffmpeg = ffmpeg;
        Settings = settings;
        Models = [detector, bodyPoints.File, torso];
        ModelHash = ModelStore.HashOf(Models);
        PipelineHash = Pipeline.Settings.PipelineHash.Of(settings);
        _detector = new(() => new ObjectDetector(detector, settings.Detector, settings.Run.PointWorkers, settings.Run.Device));
        _points = new(() => bodyPoints.Reader(torso, settings.BodyPoints, settings.Run.PointWorkers, settings.Run.Device));
    }

    public FfmpegTools Ffmpeg { get; }

    public PipelineSettings Settings { get; }

    public IReadOnlyList<ModelFile> Models { get; }

    public string ModelHash { get; }

    public string PipelineHash { get; }

    public ObjectDetector Detector => _detector.Value;

    public BodyPointReader Points => _points.Value;

    /// <summary>Makes the models ready: opens the user's own if the settings name one, imports the others if the cache lacks them.</summary>
    /// <exception cref="ModelException">A model cannot be used; the message names the file and the remedy.</exception>
    public static Workshop Open(FfmpegTools ffmpeg, ModelStore models, PipelineSettings settings)
    {
        ArgumentNullException.ThrowIfNull(models);
        ArgumentNullException.ThrowIfNull(settings);
        var first = FirstModel.Open(settings.BodyPoints, models);
        return new(ffmpeg, settings, models.Ensure(ModelCatalogue.NanoDet), first, models.Ensure(ModelCatalogue.BlazePoseHeavy));
    }

    public void Dispose()
    {
        if (_detector.IsValueCreated) _detector.Value.Dispose();
        if (_points.IsValueCreated) _points.Value.Dispose();
    }
}
