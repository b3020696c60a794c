namespace GaitSeat.Pipeline.Watch.Night;

/// <summary>What a night came to. The last word on a clip counts: one put off and done later is done.</summary>
/// <param name="Waiting">Clips of the folder that were neither done nor set aside at the time of writing.</param>
public sealed record NightSummary(DateOnly Night, DateTimeOffset Written, string Window, string Season, IReadOnlyList<NightEntry> Entries, int Waiting, IReadOnlyList<string> Notes)
{
    private const int Slowest = 10;

    public static NightSummary Of(DateOnly night, DateTimeOffset written, string window, string season, IReadOnlyList<NightEntry> journal, int waiting, IReadOnlyList<string> notes) =>
        new(night, written, window, season, [.. journal.GroupBy(e => e.ClipFile, StringComparer.Ordinal).Select(LastWord).OrderBy(e => e.ClipFile, StringComparer.Ordinal)], waiting, notes);

    public int Count(NightEnd end) => Entries.Count(e => e.End == end);

    public IEnumerable<NightEntry> Flagged => Entries.Where(e => e.Flags.Count > 0);

    /// <summary>Clips set aside, by reason, the most frequent first.</summary>
    public IEnumerable<IGrouping<string, NightEntry>> SetAside => Of(NightEnd.SetAside);

    /// <summary>Clips put off, by reason.</summary>
    public IEnumerable<IGrouping<string, NightEntry>> PutOff => Of(NightEnd.PutOff);

    public IEnumerable<NightEntry> TenSlowest => Entries.OrderByDescending(e => e.Seconds).Take(Slowest);

    public int Retries => Entries.Sum(e => e.Retries);

    public int Frames => Entries.Sum(e => e.Frames);

    public int Strides => Entries.Sum(e => e.Strides);

    /// <summary>Time spent on clips, over all workers.</summary>
    public TimeSpan Worked => TimeSpan.FromSeconds(Entries.Sum(e => e.Seconds));

    /// <summary>From the beginning of the first clip to the end of the last; zero without clips.</summary>
    public TimeSpan Span => Entries.Count == 0 ? TimeSpan.Zero : Entries.Max(e => e.At) - Entries.Min(e => e.At - TimeSpan.FromSeconds(e.Seconds));

    private IEnumerable<IGrouping<string, NightEntry>> Of(NightEnd end) =>
        Entries.Where(e => e.End == end).GroupBy(e => e.Reason ?? "unknown", StringComparer.Ordinal).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal);

    /// <summary>"Already done" says less than what was said before it.</summary>
    private static NightEntry LastWord(IEnumerable<NightEntry> entries)
    {
        var all = entries.OrderBy(e => e.At).ToList();
        var last = all.LastOrDefault(e => e.End != NightEnd.AlreadyDone) ?? all[^1];
        return last with { Retries = all.Sum(e => e.Retries), Seconds = all.Sum(e => e.Seconds) };
    }
}
