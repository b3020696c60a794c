using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch.Children;
using GaitSeat.Pipeline.Watch.Night;
using GaitSeat.Pipeline.Watch.Policies;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Watch;

/// <summary>One clip from the queue: key, ledger, measuring under the policies, journal. May be called twice for a clip; the second time finds it done.</summary>
public sealed class ClipJob(ClipJobTools tools)
{
    /// <exception cref="OperationCanceledException">Stopped; the clip is undone and found again.</exception>
    public async Task RunAsync(ClipTicket ticket, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(ticket);
        var path = Path.Combine(tools.ClipFolder, ticket.File);
        var begun = tools.Time.GetTimestamp();
        tools.Voice.ClipBegins(ShownName(ticket));
        var entry = await TryAsync(path, ticket, ct);
        if (entry is null) return;
        // Asked anew: the sheet may have changed meanwhile.
        tools.Voice.ClipEnds(entry with { At = tools.Time.GetUtcNow(), Worker = tools.Desk.Name, ClipFile = entry.End == NightEnd.NoConsent ? Unnamed : ShownName(ticket), Seconds = tools.Time.GetElapsedTime(begun).TotalSeconds });
    }

    /// <summary>What journal, log and summary call a clip of which nothing is to be kept, its name included.</summary>
    private const string Unnamed = "(a clip without consent)";

    private string ShownName(ClipTicket ticket) => MayBeKept(ticket) ? ticket.File : Unnamed;

    private bool MayBeKept(ClipTicket ticket) => tools.Sheet.Current().RowOf(ticket.File)?.Against(ConsentUse.Measure) is null;

    /// <returns>Null where nothing became of it: the file was replaced or is in another worker's hands.</returns>
    private async Task<NightEntry?> TryAsync(string path, ClipTicket ticket, CancellationToken ct)
    {
        var clip = new ClipTry(ticket.File);
        try
        {
            var report = await tools.Policies.RunAsync(clip, token => OnceAsync(path, ticket, clip, token), ct);
            tools.Pending.Finished(ticket, clip.Session);
            var detail = report.End == ClipEnd.NoConsent ? clip.Session?.Against(ConsentUse.Measure)?.Sentence : report.Detail;
            return Entry(Ends(report.End), report.Reason, detail, clip) with { Frames = report.Frames, Strides = report.Strides, Flags = report.Flags };
        }
        catch (ClipElsewhereException e)
        {
            tools.Voice.Says(e.Message);
            return null;
        }
        catch (ReplacedException)
        {
            tools.Voice.Says($"{ticket.File}: replaced or taken away since it was queued; what is there now is queued when it stands still");
            return null;
        }
        catch (ClipCrashException e)
        {
            return await AfterCrashesAsync(ticket, clip, e.Message, ct);
        }
        catch (ClipKilledException e)
        {
            // All tries of the retry policy came to this: it counts as one crash.
            if (clip.Crashes!.Add(e.Message) >= tools.Settings.Crash.Maximum) return await AfterCrashesAsync(ticket, clip, e.Message, ct);
            tools.Pending.PutOff(ticket);
            return Entry(NightEnd.PutOff, "killed", e.Message, clip);
        }
        catch (CanPassException e)
        {
            tools.Pending.PutOff(ticket);
            return Entry(NightEnd.PutOff, "not_passed", e.Message, clip);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            // A bug of ours must not look like a fault of the clip; it is listed, and the other clips go on.
            tools.Pending.PutOff(ticket);
            return Entry(NightEnd.PutOff, "failed", $"{e.GetType().Name}: {e.Message}", clip);
        }
    }

    private async Task<ClipReport> OnceAsync(string path, ClipTicket ticket, ClipTry clip, CancellationToken ct)
    {
        try
        {
            var key = await KeyAsync(path, ticket, ct);
            clip.Crashes ??= tools.CrashesOf(key);
            var session = clip.Session = tools.Sheet.Current().RowOf(ticket.File);
            if (tools.Work.IsDone(key, session)) return new(ClipEnd.AlreadyDone, null, null, 0, 0, []);
            if (clip.Crashes.Count >= tools.Settings.Crash.Maximum) throw new ClipCrashException(clip.Crashes.Last ?? "", tooOften: true);
            clip.LengthSeconds ??= await tools.LengthOf(path, ct);
            return await tools.Policies.LimitAsync(clip, token => tools.Worker.DoAsync(new(path, key, ticket.Bytes, ticket.ModifiedTicksUtc), session, new FrameCount(tools.Voice), token), ct);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or DatasetException)
        {
            throw await tools.Breaker.JudgeAsync(e, ct);
        }
    }

    private async Task<string> KeyAsync(string path, ClipTicket ticket, CancellationToken ct)
    {
        if (!IsThere(path, ticket)) throw Directory.Exists(tools.ClipFolder) ? new ReplacedException() : new IOException($"'{tools.ClipFolder}' is gone");
        if (tools.Known.KeyOf(ticket) is { } known) return known;
        var key = await KeyedClip.HashAsync(path, ticket.Bytes, ct);
        // Written to while it was read: the key would name bytes that never lay there together.
        if (!IsThere(path, ticket)) throw new ReplacedException();
        if (MayBeKept(ticket)) tools.Known.Add(ticket, key);
        return key;
    }

    private static bool IsThere(string path, ClipTicket ticket) => new FileInfo(path) is var file && ClipFile.IsThere(file) && ClipTicket.Of(file) == ticket;

    private async Task<NightEntry> AfterCrashesAsync(ClipTicket ticket, ClipTry clip, string last, CancellationToken ct)
    {
        var session = tools.Sheet.Current().RowOf(ticket.File);
        var detail = $"{ticket.File}: brought its process down {clip.Crashes!.Count} times, the last time: {last}";
        try
        {
            await tools.Work.SetAsideAsync(ticket.File, tools.Known.KeyOf(ticket)!, session, "process_crashed", detail, ct);
        }
        catch (DatasetException e)
        {
            tools.Pending.PutOff(ticket);
            return Entry(NightEnd.PutOff, "not_written", e.Message, clip);
        }

        tools.Pending.Finished(ticket, session);
        return Entry(NightEnd.SetAside, "process_crashed", detail, clip);
    }

    private static NightEntry Entry(NightEnd end, string? reason, string? detail, ClipTry clip) =>
        new(default, "", clip.File, end, reason, detail, 0, 0, [], 0, clip.Retries);

    private static NightEnd Ends(ClipEnd end) => end switch
    {
        ClipEnd.Measured => NightEnd.Measured,
        ClipEnd.SetAside => NightEnd.SetAside,
        ClipEnd.NoConsent => NightEnd.NoConsent,
        ClipEnd.AlreadyDone => NightEnd.AlreadyDone,
        _ => NightEnd.PutOff,
    };

    private sealed class ReplacedException : Exception;

    /// <summary>Turns the count so far into what came in since.</summary>
    private sealed class FrameCount(IWatchVoice voice) : IProgress<int>
    {
        private int _before;

        public void Report(int value)
        {
            var more = value - Interlocked.Exchange(ref _before, value);
            if (more > 0) voice.Frames(more);
        }
    }
}

/// <summary>What a clip's job works with.</summary>
/// <param name="Work">Asked whether a clip is done, and to set one aside.</param>
/// <param name="Worker">Does a clip.</param>
/// <param name="LengthOf">Length of a clip, s; null where it does not tell.</param>
/// <param name="CrashesOf">The count of a clip's crashes, by its key.</param>
public sealed record ClipJobTools(
    string ClipFolder,
    WatchSettings Settings,
    WorkerDesk Desk,
    SheetKeeper Sheet,
    KnownClips Known,
    PendingClips Pending,
    ClipWork Work,
    IClipWorker Worker,
    ClipPolicies Policies,
    StorageBreaker Breaker,
    IWatchVoice Voice,
    Func<string, CancellationToken, Task<double?>> LengthOf,
    Func<string, CrashCount> CrashesOf,
    TimeProvider Time);
