using GaitSeat.Footage;
using GaitSeat.Footage.Pictures;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Store;
using GaitSeat.Study.Plots;

namespace GaitSeat.Pipeline.Season;

/// <summary>The real thing: FFmpeg and the models of a workshop.</summary>
public sealed class WorkshopStage(Workshop workshop) : IClipStage
{
    private readonly ClipMeasurer _measurer = new(workshop);

    public string PipelineHash => workshop.PipelineHash;

    public string ModelHash => workshop.ModelHash;

    public Task<ClipMeasurement> MeasureAsync(string path, BodyLengths lengths, IProgress<int>? progress, CancellationToken ct) =>
        _measurer.MeasureAsync(path, lengths, progress, ct);

    public async Task<IReadOnlyList<string>> DrawAsync(ClipMeasurement measured, string clipKey, string folder, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentException.ThrowIfNullOrEmpty(clipKey);
        var output = workshop.Settings.Output;
        Directory.CreateDirectory(folder);
        var files = new List<string>();
        // By the clip's key: pictures are what is handed on, and the name of the file may tell who rides.
        var name = $"{ClipKey.InName(clipKey)}-{workshop.PipelineHash[..8]}";
        if (output.Plot)
        {
            string png = Path.Combine(folder, name + "-seat.png"), svg = Path.ChangeExtension(png, ".svg");
            SeatMotionPlot.Save(measured.Motion, $"clip {ClipKey.InName(clipKey)}", png, svg);
            files.AddRange([png, svg]);
        }

        if (output.Overlay)
        {
            var maker = new OverlayMaker(new FrameReader(workshop.Ffmpeg), workshop.Ffmpeg);
            var made = await maker.MakeAsync(measured.Info, measured.Read, measured.Sightings, measured.Motion, folder, name, output.Drawing, measured.People.OthersAt, ct);
            files.AddRange(new[] { made.VideoPath, made.SitStillPath, made.TopStillPath }.OfType<string>());
        }

        return files;
    }
}
