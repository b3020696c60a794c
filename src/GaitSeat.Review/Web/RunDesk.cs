using System.Globalization;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Pipeline.Watch.Policies;
using GaitSeat.Review.Clips;
using GaitSeat.Store;
using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Web;

/// <summary>Puts together the run screen: what the worker's logs and journal tell, and what the run set aside; takes back that a clip was set aside.</summary>
internal sealed class RunDesk(Dataset dataset, DatasetRun run, string clipFolder, ClipShelf shelf, TimeProvider time)
{
    private const int NightsShown = 14;
    private const string Unnamed = "a clip without consent";
    private static readonly TimeSpan LooksBack = TimeSpan.FromHours(48);
    private readonly string _workerFolder = Path.Combine(dataset.Folder, WorkerDesk.FolderName);

    internal Task PageAsync(HttpContext context) => context.Response.WriteAsJsonAsync(Page());

    internal async Task RetryAsync(HttpContext context)
    {
        if (await Body.ReadAsync<GivenClip>(context) is not { } given) return;
        if (Clips().FirstOrDefault(c => c.ClipKey == given.ClipKey && c.Status == ClipStatus.SetAside) is not { } clip || !shelf.MayShow(clip.ClipKey, clip.ClipFile))
        {
            await Guard.RefuseAsync(context, StatusCodes.Status404NotFound, "The run has set no such clip aside, or it may not be shown.");
            return;
        }

        try
        {
            // The count first: a clip that is undone and still counted as crashing would be set aside unseen.
            CrashCount.Forget(dataset.Folder, clip.ClipKey, run.PipelineHash, run.ModelHash);
            ClipRetry.SetBack(dataset, run, clip.ClipKey);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"The count of crashes of '{clip.ClipFile}' could not be taken away ({e.Message}). Check rights, then try again.", e);
        }

        await context.Response.WriteAsJsonAsync(new RetriedClip(
            $"{clip.ClipFile} counts as not done again. 'gaitseat process' tries it in its next run; a running worker when its window next opens, or when it is started again.", Page()));
    }

    private RunPage Page()
    {
        var clips = Clips();
        var nights = NightJournal.Nights(_workerFolder).Take(NightsShown).Select(n => NightSummary.Of(n, time.GetUtcNow(), "", "", NightJournal.Read(_workerFolder, n), 0, [])).ToArray();
        var setAside = clips.Where(c => c.Status == ClipStatus.SetAside).ToArray();
        return new(
            clips.Count(c => c.Status == ClipStatus.Measured), setAside.Length, Waiting(clips), setAside.Count(c => !shelf.MayShow(c.ClipKey, c.ClipFile)),
            [.. WorkerSign.Read(_workerFolder, time.GetUtcNow() - LooksBack).Select(WorkerOf)],
            [.. setAside.Where(c => shelf.MayShow(c.ClipKey, c.ClipFile)).GroupBy(c => c.Reason ?? "unknown").OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new SetAsideGroup(Words(g.Key), [.. g.Select(c => new SetAsideClip(c.ClipKey, c.ClipFile, WithoutName(c)))]))],
            [.. nights.Take(1).SelectMany(n => n.Entries).Where(e => e.End == NightEnd.PutOff && shelf.HasConsent(e.ClipFile)).Select(e => new PutOffClip(e.ClipFile, Words(e.Reason ?? "unknown"), e.Detail ?? ""))],
            [.. nights.Select(n => new ShownNight(
                n.Night.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), n.Count(NightEnd.Measured), n.Flagged.Count(), n.Count(NightEnd.SetAside), n.Count(NightEnd.PutOff), n.Strides,
                Math.Round(n.Worked.TotalMinutes, 1)))]);
    }

    private ShownWorker WorkerOf(WorkerSign sign) => new(
        sign.Worker, RunningProcess.Of(sign.Worker, sign.LastWord), Time(sign.LastWord),
        // What it says may name a clip; of a clip in hand the list tells.
        sign.Paused is not null ? "pauses" : sign.InHand.Count > 0 ? "measures" : sign.Says is "begins" or "ends" or "queued" or "tries" ? "between clips" : sign.Says,
        sign.Paused, [.. sign.InHand.Select(c => new ClipInHand(shelf.HasConsent(c.Key) ? c.Key : Unnamed, Time(c.Value)))]);

    /// <summary>Clips of the folder that may be measured and have no row in this run, by name.</summary>
    private int Waiting(IReadOnlyList<ClipRow> clips)
    {
        var done = clips.Select(c => c.ClipFile).ToHashSet(StringComparer.Ordinal);
        try
        {
            return ClipFolder.Present(clipFolder).Count(f => !done.Contains(f.Name) && shelf.HasConsent(f.Name));
        }
        catch (IOException)
        {
            // The folder is gone; the review itself says so for each clip.
            return 0;
        }
    }

    private ClipRow[] Clips() => [.. dataset.Clips().Where(c => c.PipelineHash == run.PipelineHash && c.ModelHash == run.ModelHash)];

    /// <summary>Many details begin with the file's name, which stands beside them.</summary>
    private static string WithoutName(ClipRow clip) => clip.Detail is not { } detail ? "" : detail.StartsWith(clip.ClipFile + ": ", StringComparison.Ordinal) ? detail[(clip.ClipFile.Length + 2)..] : detail;

    private static string Words(string reason) => reason.Replace('_', ' ');

    private static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss 'UTC'", CultureInfo.InvariantCulture);
}
