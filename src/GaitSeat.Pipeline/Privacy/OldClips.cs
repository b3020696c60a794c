using GaitSeat.Store;

namespace GaitSeat.Pipeline.Privacy;

/// <summary>Clips of sessions that are older than they may be kept.</summary>
/// <param name="ClipKeys">Those whose session is older.</param>
/// <param name="Sessions">How many days, riders and horses that is.</param>
/// <param name="Undated">Clips whose row names no day: nobody can say how old they are.</param>
/// <param name="Before">Sessions before this day are too old.</param>
public sealed record OldClips(IReadOnlyList<string> ClipKeys, int Sessions, int Undated, DateOnly Before)
{
    /// <param name="keepDays">How many days back sessions are kept, the day itself included.</param>
    public static OldClips Find(Dataset dataset, int keepDays, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(dataset);
        ArgumentOutOfRangeException.ThrowIfNegative(keepDays);
        var before = today.AddDays(-keepDays);
        var clips = dataset.Clips();
        var old = clips.Where(c => c.SessionDate < before).ToArray();
        return new(
            [.. old.Select(c => c.ClipKey).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            old.Select(c => (c.SessionDate, c.Rider, c.Horse)).Distinct().Count(),
            clips.Where(c => c.SessionDate is null).Select(c => c.ClipKey).Distinct(StringComparer.Ordinal).Count(),
            before);
    }
}
