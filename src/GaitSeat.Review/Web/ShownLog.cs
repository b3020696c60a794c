using System.Collections.Concurrent;
using GaitSeat.Review.Seasons;
using GaitSeat.Store;

namespace GaitSeat.Review.Web;

/// <summary>Writes into the dataset's audit log whose footage and figures a judge was shown: once a clip and kind while the program runs, since a film is asked for in many parts.</summary>
internal sealed class ShownLog(ReviewSeason season, string judge, TimeProvider time)
{
    private readonly AuditLog _log = new(season.Dataset.Folder);
    private readonly ConcurrentDictionary<(string, string), bool> _told = new();
    private readonly Dictionary<string, string?> _riders = season.Spells.GroupBy(s => s.Provenance.ClipKey, StringComparer.Ordinal).ToDictionary(s => s.Key, s => s.First().Rider, StringComparer.Ordinal);

    /// <exception cref="DatasetException">It cannot be written: what is not logged is not shown.</exception>
    internal void Tell(string what, string clipKey) => Once(what, clipKey, [_riders.GetValueOrDefault(clipKey)], [clipKey]);

    /// <summary>The figures of a rider's whole season.</summary>
    /// <exception cref="DatasetException">As for <see cref="Tell"/>.</exception>
    internal void TellSeason(RiderSeason rider) => Once("season", rider.Rider ?? "", [rider.Rider], rider.ClipKeys);

    private void Once(string what, string of, IEnumerable<string?> riders, IEnumerable<string> clipKeys)
    {
        if (_told.ContainsKey((what, of))) return;
        _log.Add(time.GetUtcNow(), judge, "shown", what, riders, clipKeys, null);
        _told[(what, of)] = true;
    }
}
