using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Flags;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Store;
using Polly;
using Polly.Retry;

namespace GaitSeat.Pipeline.Season;

/// <summary>
/// A folder of clips to a dataset of strides, one clip after another. The dataset is the ledger: what is there under its key is not done again,
/// so a run that was stopped goes on where it was.
/// </summary>
/// <param name="machine">Name of this machine.</param>
public sealed class SeasonRun(Workshop workshop, TimeProvider time, string softwareVersion, string machine)
{
    private readonly WorkshopStage _stage = new(workshop);

    /// <param name="request">Folders.</param>
    /// <param name="watcher">Told of each clip and frame; may be null.</param>
    /// <param name="ct">Stops the run; the clip under way leaves nothing behind and is done by the next run.</param>
    /// <exception cref="SeasonException">The folder, the sheet or the dataset folder cannot be used; nothing was changed.</exception>
    public async Task<SeasonSummary> RunAsync(SeasonRequest request, ISeasonWatcher? watcher, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var begun = time.GetTimestamp();
        var clips = ClipFolder.List(request.ClipFolder);
        var asWritten = SeasonSheet.Of(request.ClipFolder, DateOnly.FromDateTime(time.GetLocalNow().Date));
        var dataset = OpenDataset(request.DatasetFolder);
        var forgotten = ForgottenList.Read(dataset.Folder);
        var sheet = asWritten.Without(forgotten);
        ConsentRecord.Read(dataset.Folder).Keep(sheet.Rows);
        foreach (var note in sheet.Notes) watcher?.Note(note);
        dataset.CleanLeftovers();
        var work = new ClipWork(_stage, dataset, workshop.Settings.Output.Tracks, softwareVersion);
        using var desk = WorkerDesk.Claim(dataset.Folder, machine);
        var known = new KnownClips(desk, forgotten);
        watcher?.SeasonBegins(clips.Count);
        var outcomes = new List<ClipOutcome>();
        foreach (var clip in clips)
        {
            ct.ThrowIfCancellationRequested();
            watcher?.ClipBegins(Path.GetFileName(clip));
            var outcome = await OneClipAsync(clip, sheet, known, work, watcher, ct);
            outcomes.Add(outcome);
            watcher?.ClipEnds(outcome);
        }

        foreach (var line in await SessionPass.NotesAsync(workshop.Settings.Motion.Session, softwareVersion, dataset, _stage, ct)) watcher?.Note(line);
        foreach (var line in await FlagPass.NotesAsync(workshop.Settings, softwareVersion, dataset, _stage, ct)) watcher?.Note(line);
        return new SeasonSummary(outcomes, time.GetElapsedTime(begun), Path.GetFullPath(request.DatasetFolder), workshop.PipelineHash, workshop.ModelHash);
    }

    /// <summary>Where a dataset keeps its overlays, stills and plots.</summary>
    public static string PictureFolder(string datasetFolder) => Path.Combine(datasetFolder, "pictures");

    /// <exception cref="SeasonException">The dataset folder cannot be made or written to.</exception>
    public static Dataset OpenDataset(string folder)
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

    private async Task<ClipOutcome> OneClipAsync(string path, SeasonSheet sheet, KnownClips known, ClipWork work, ISeasonWatcher? watcher, CancellationToken ct)
    {
        var file = Path.GetFileName(path);
        if (sheet.Lacks(file)) watcher?.Note($"{file} has no row in the sheet: measured in percent of leg length");
        var session = sheet.RowOf(file);
        try
        {
            return await RetryPolicy(watcher, file).ExecuteAsync(
                async token =>
                {
                    // Of a clip without consent not even the key is kept.
                    var clip = session is { Consent: false } ? await KeyedClip.OfAsync(path, token) : await known.OfAsync(path, token);
                    return await work.DoAsync(clip, session, watcher, token);
                },
                ct);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return ClipOutcome.Without(file, ClipEnd.PutOff, "not_passed", $"{file}: {e.Message}");
        }
    }

    /// <summary>A file that is still being copied or on a share that is away for a moment can be read a little later, and FFmpeg ended for want of memory may go through; nothing else is tried again.</summary>
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
