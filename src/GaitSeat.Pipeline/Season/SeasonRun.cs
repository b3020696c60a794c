using GaitSeat.Footage;
using GaitSeat.Footage.Pictures;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Store;
using GaitSeat.Study.Plots;
using Polly;
using Polly.Retry;

namespace GaitSeat.Pipeline.Season;

/// <summary>
/// A folder of clips to a dataset of strides, one clip after another. The dataset is the ledger: what is there under its key is not done again,
/// so a run that was stopped goes on where it was.
/// </summary>
public sealed class SeasonRun(Workshop workshop, TimeProvider time, string softwareVersion)
{
    private readonly ClipMeasurer _measurer = new(workshop);

    /// <param name="request">Folders.</param>
    /// <param name="watcher">Told of each clip and frame; may be null.</param>
    /// <param name="ct">Stops the run; the clip under way leaves nothing behind and is done by the next run.</param>
    /// <exception cref="SeasonException">The folder, the sheet or the dataset folder cannot be used; nothing was changed.</exception>
    public async Task<SeasonSummary> RunAsync(SeasonRequest request, ISeasonWatcher? watcher, CancellationToken ct)
    {
        var begun = time.GetTimestamp();
        var clips = ClipFolder.List(request.ClipFolder);
        var sheet = SheetOf(request.ClipFolder, watcher);
        var dataset = OpenDataset(request.DatasetFolder);
        dataset.CleanLeftovers();
        watcher?.SeasonBegins(clips.Count);
        var outcomes = new List<ClipOutcome>();
        foreach (var clip in clips)
        {
            ct.ThrowIfCancellationRequested();
            var file = Path.GetFileName(clip);
            watcher?.ClipBegins(file);
            var outcome = await OneClipAsync(clip, sheet?.Sessions.GetValueOrDefault(file), sheet is not null, dataset, watcher, ct);
            outcomes.Add(outcome);
            watcher?.ClipEnds(outcome);
        }

        await SessionsAsync(dataset, watcher, ct);
        return new SeasonSummary(outcomes, time.GetElapsedTime(begun), Path.GetFullPath(request.DatasetFolder), workshop.PipelineHash, workshop.ModelHash);
    }

    /// <summary>The strides are safe by now: an old file that cannot be read must not make the whole run fail.</summary>
    private async Task SessionsAsync(Dataset dataset, ISeasonWatcher? watcher, CancellationToken ct)
    {
        try
        {
            var pass = new SessionPass(workshop.Settings.Motion.Session, softwareVersion);
            foreach (var change in await pass.RunAsync(dataset, workshop.PipelineHash, workshop.ModelHash, ct)) watcher?.Note(change);
        }
        catch (DatasetException e)
        {
            watcher?.Note($"the sessions table was not made: {e.Message}");
        }
    }

    private static SheetResult? SheetOf(string folder, ISeasonWatcher? watcher)
    {
        var path = Path.Combine(folder, SessionSheet.FileName);
        if (!File.Exists(path))
        {
            watcher?.Note($"no {SessionSheet.FileName} in the folder: no rider sizes, so lengths are in percent of leg length; 'gaitseat sheet' writes a template");
            return null;
        }

        var sheet = SessionSheet.Read(path);
        if (sheet.Errors.Count > 0) throw new SeasonException($"'{path}' cannot be used", [.. sheet.Errors.Select(e => e.ToString())]);
        foreach (var warning in sheet.Warnings) watcher?.Note(warning.ToString());
        return sheet;
    }

    private static Dataset OpenDataset(string folder)
    {
        try
        {
            return Dataset.Open(folder);
        }
        catch (DatasetException e)
        {
            throw new SeasonException(e.Message);
        }
    }

    private async Task<ClipOutcome> OneClipAsync(string path, Session? session, bool hasSheet, Dataset dataset, ISeasonWatcher? watcher, CancellationToken ct)
    {
        var file = Path.GetFileName(path);
        if (session is { Consent: false })
        {
            await EraseAsync(path, dataset, ct);
            return ClipOutcome.Without(file, ClipEnd.NoConsent, "no_consent", $"{file}: the sheet says no consent; not processed, and nothing of it is kept");
        }

        if (session is null && hasSheet)
            watcher?.Note($"{file} has no row in the sheet: measured in percent of leg length");

        var key = await RetryPolicy(watcher, file).ExecuteAsync(async token => await ClipKey.OfFileAsync(path, token), ct);
        if (dataset.IsDone(key, workshop.PipelineHash, workshop.ModelHash, session, workshop.Settings.Output.Tracks)) return ClipOutcome.Without(file, ClipEnd.AlreadyDone, null, null);
        var provenance = new Provenance(key, file, workshop.PipelineHash, workshop.ModelHash, softwareVersion, Provenance.CurrentSchemaVersion);
        try
        {
            var measured = await _measurer.MeasureAsync(path, session?.Lengths ?? BodyLengths.Unknown, watcher, ct);
            var pictures = await PicturesAsync(measured, key, dataset, ct);
            await dataset.WriteAsync(new(provenance, session, measured.Info, ClipStatus.Measured, null, null, measured.Sightings, measured.Motion, measured.Findings, measured.LeftOut, measured.Sightings.Count), workshop.Settings.Output.Tracks, ct);
            return new(file, ClipEnd.Measured, null, null, measured.Sightings.Count, measured.Motion.Spells, measured.Motion.Strides, measured.Findings, measured.LeftOut, pictures);
        }
        catch (ClipSetAsideException e)
        {
            await dataset.WriteAsync(new(provenance, session, null, ClipStatus.SetAside, e.Reason, e.Message, null, null, [], [], 0), workshop.Settings.Output.Tracks, ct);
            return ClipOutcome.Without(file, ClipEnd.SetAside, e.Reason, e.Message);
        }
    }

    /// <summary>Consent that was taken back: rows and pictures of earlier runs go.</summary>
    private static async Task EraseAsync(string path, Dataset dataset, CancellationToken ct)
    {
        var key = await ClipKey.OfFileAsync(path, ct);
        dataset.Erase(key);
        var pictures = PictureFolder(dataset.Folder);
        if (!Directory.Exists(pictures)) return;
        foreach (var file in Directory.EnumerateFiles(pictures, $"*-{key[..8]}-*")) File.Delete(file);
    }

    private async Task<IReadOnlyList<string>> PicturesAsync(ClipMeasurement measured, string key, Dataset dataset, CancellationToken ct)
    {
        var output = workshop.Settings.Output;
        var folder = Directory.CreateDirectory(PictureFolder(dataset.Folder)).FullName;
        var files = new List<string>();
        var name = $"{Path.GetFileNameWithoutExtension(measured.Info.Path)}-{key[..8]}-{workshop.PipelineHash[..8]}";
        if (output.Plot)
        {
            string png = Path.Combine(folder, name + "-seat.png"), svg = Path.ChangeExtension(png, ".svg");
            SeatMotionPlot.Save(measured.Motion, Path.GetFileName(measured.Info.Path), png, svg);
            files.AddRange([png, svg]);
        }

        if (output.Overlay)
        {
            var maker = new OverlayMaker(new FrameReader(workshop.Ffmpeg), workshop.Ffmpeg);
            var made = await maker.MakeAsync(measured.Info, workshop.Settings.Read, measured.Sightings, measured.Motion, folder, name, output.Drawing, measured.People.OthersAt, ct);
            files.AddRange(new[] { made.VideoPath, made.SitStillPath, made.TopStillPath }.OfType<string>());
        }

        return files;
    }

    /// <summary>Where a dataset keeps its overlays, stills and plots.</summary>
    public static string PictureFolder(string datasetFolder) => Path.Combine(datasetFolder, "pictures");

    /// <summary>A file that is still being copied or on a share that is away for a moment can be read a little later; nothing else is tried again.</summary>
    private ResiliencePipeline RetryPolicy(ISeasonWatcher? watcher, string file) =>
        new ResiliencePipelineBuilder { TimeProvider = time }
            .AddRetry(new RetryStrategyOptions
            {
                ShouldHandle = new PredicateBuilder().Handle<IOException>(e => e is not (FileNotFoundException or DirectoryNotFoundException)),
                MaxRetryAttempts = workshop.Settings.Run.ReadAttempts,
                Delay = TimeSpan.FromSeconds(workshop.Settings.Run.RetryPauseSeconds),
                BackoffType = DelayBackoffType.Exponential,
                OnRetry = retry =>
                {
                    watcher?.Note($"{file}: {retry.Outcome.Exception?.Message}; trying again");
                    return ValueTask.CompletedTask;
                },
            })
            .Build();
}
