using GaitSeat.Pipeline.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Watch;

/// <summary>
/// Which file had which key, so that a finished season is recognised without reading its hundreds of gigabytes again. Only a shortcut: the dataset says what is done,
/// and without these files everything is hashed once more. All workers of a dataset read what the others found out.
/// </summary>
public sealed class KnownClips
{
    private readonly Lock _guard = new();
    private readonly Dictionary<ClipTicket, string> _keys = [];
    private readonly Dictionary<string, long> _read = new(StringComparer.Ordinal);
    private readonly string _own;
    private readonly ForgottenList _forgotten;

    /// <param name="forgotten">Clips of which nothing is kept, not even this.</param>
    public KnownClips(WorkerDesk desk, ForgottenList forgotten)
    {
        ArgumentNullException.ThrowIfNull(desk);
        _forgotten = forgotten;
        _own = desk.FileOf("known", ".jsonl");
        Refresh();
    }

    /// <summary>Reads what other workers found out since.</summary>
    public void Refresh()
    {
        foreach (var file in new DirectoryInfo(Path.GetDirectoryName(_own)!).EnumerateFiles("*.jsonl"))
        {
            if (_read.GetValueOrDefault(file.Name) == file.Length) continue;
            _read[file.Name] = file.Length;
            lock (_guard)
            {
                foreach (var known in JsonLines.ReadAll<Known>(file.DirectoryName!, file.Name)) _keys[new(known.File, known.Bytes, known.ModifiedTicksUtc)] = known.ClipKey;
            }
        }
    }

    /// <summary>The clip's key; null where it is not known.</summary>
    public string? KeyOf(ClipTicket ticket)
    {
        lock (_guard) return _keys.GetValueOrDefault(ticket);
    }

    /// <summary>The clip with its key, read only where that is not known.</summary>
    /// <exception cref="IOException">It cannot be read, or was written to while it was read.</exception>
    public async Task<KeyedClip> OfAsync(string path, CancellationToken ct)
    {
        var ticket = ClipTicket.Of(new FileInfo(path));
        if (KeyOf(ticket) is { } known) return new(path, known, ticket.Bytes, ticket.ModifiedTicksUtc);
        var clip = await KeyedClip.OfAsync(path, ct);
        Add(new(clip.File, clip.Bytes, clip.ModifiedTicksUtc), clip.Key);
        return clip;
    }

    public void Add(ClipTicket ticket, string clipKey)
    {
        ArgumentNullException.ThrowIfNull(ticket);
        lock (_guard)
        {
            if (_keys.GetValueOrDefault(ticket) == clipKey || _forgotten.HasClip(clipKey)) return;
            JsonLines.Append(_own, new Known(ticket.File, ticket.Bytes, ticket.ModifiedTicksUtc, clipKey));
            _keys[ticket] = clipKey;
        }
    }

    private sealed record Known(string File, long Bytes, long ModifiedTicksUtc, string ClipKey);
}
