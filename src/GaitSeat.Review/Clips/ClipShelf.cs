using System.Collections.Concurrent;
using GaitSeat.Store;

namespace GaitSeat.Review.Clips;

/// <summary>A clip that can be shown, or why it cannot.</summary>
/// <param name="Path">Full path; null where it cannot be shown.</param>
/// <param name="Refusal">A sentence; null where it can.</param>
public sealed record ShelvedClip(string? Path, string? Refusal);

/// <summary>The clips of the folder by their keys. A file is handed out only when its content is still what was measured.</summary>
public sealed class ClipShelf(string folder, IReadOnlyDictionary<string, ClipFacts> clips, ConsentGate consent, ForgottenWatch forgotten)
{
    /// <summary>Its rider was forgotten, or it was older than it may be kept. Two lines on the screen.</summary>
    private const string Erased = "It was erased from the dataset since the page was opened; nothing of it is kept.";

    private readonly string _folder = Path.GetFullPath(folder);
    private readonly ConcurrentDictionary<(string Path, long Bytes, DateTime Modified), Task<string>> _keys = new();

    public ClipFacts? Facts(string clipKey) => clips.GetValueOrDefault(clipKey);

    /// <returns>Null where nothing stands against showing what was measured of the clip.</returns>
    public string? Refusal(string clipKey) => IsErased(clipKey) ? Erased : Facts(clipKey) is { } facts ? consent.Refusal(facts.ClipFile) : "The run has no such clip.";

    /// <summary>Whether the clip was erased while the page is open; nothing may be written of it any more.</summary>
    public bool IsErased(string clipKey) => forgotten.Has(clipKey);

    /// <summary>Whether what is known of a clip may be shown, also of one that was set aside.</summary>
    public bool MayShow(string clipKey, string clipFile) => !IsErased(clipKey) && HasConsent(clipFile);

    /// <summary>The same where no more than the file's name is known.</summary>
    public bool HasConsent(string clipFile) => consent.Refusal(clipFile) is null;

    public async Task<ShelvedClip> FindAsync(string clipKey, CancellationToken cancellationToken)
    {
        if (Refusal(clipKey) is { } refusal) return new(null, refusal);
        var name = Facts(clipKey)!.ClipFile;
        // The name comes from the dataset, which may come from elsewhere.
        if (name != Path.GetFileName(name)) return new(null, "The dataset names a file outside the folder; it is not opened.");
        var file = new FileInfo(Path.Combine(_folder, name));
        if (!file.Exists) return new(null, $"'{name}' is not in the folder of clips.");
        try
        {
            var key = await _keys.GetOrAdd((file.FullName, file.Length, file.LastWriteTimeUtc), f => ClipKey.OfFileAsync(f.Path, CancellationToken.None)).WaitAsync(cancellationToken);
            return key == clipKey ? new(file.FullName, null) : new(null, $"'{name}' is another file now than the one that was measured.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            _keys.TryRemove((file.FullName, file.Length, file.LastWriteTimeUtc), out _);
            return new(null, $"'{name}' cannot be read: {e.Message}");
        }
    }
}
