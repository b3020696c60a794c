using System.Collections.Concurrent;
using GaitSeat.Store;

namespace GaitSeat.Review.Web;

/// <summary>Writes into the dataset's audit log whose footage and figures a judge was shown: once a clip and kind while the program runs, since a film is asked for in many parts.</summary>
internal sealed class ShownLog(ReviewSeason season, string judge, TimeProvider time)
{
    private readonly AuditLog _log = new(season.Dataset.Folder);
    private readonly ConcurrentDictionary<(string, string), bool> _told = new();
    private readonly Dictionary<string, string?> _riders = season.Spells.GroupBy(s => s.Provenance.ClipKey, StringComparer.Ordinal).ToDictionary(s => s.Key, s => s.First().Rider, StringComparer.Ordinal);

    /// <exception cref="DatasetException">It cannot be written: what is not logged is not shown.</exception>
    internal void Tell(string what, string clipKey)
    {
        if (_told.ContainsKey((what, clipKey))) return;
        _log.Add(time.GetUtcNow(), judge, "shown", what, [_riders.GetValueOrDefault(clipKey)], [clipKey], null);
        _told[(what, clipKey)] = true;
    }
}
