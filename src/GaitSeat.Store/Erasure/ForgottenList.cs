using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// Who was forgotten and which clips were erased, so that a later run does not measure them again: <c>forgotten.json</c> in the dataset, salted hashes only. A hash does not name anyone, but
/// whoever has the file can try pseudonyms one after the other; those of riders are hashed slowly to make that dear.
/// </summary>
public sealed class ForgottenList
{
    public const string FileName = "forgotten.json";

    /// <summary>Rounds of PBKDF2 for a pseudonym: some 10 ms, since every rider of a sheet is asked for at the start of a run.</summary>
    private const int Rounds = 20_000;
    private const int SaltBytes = 16, HashBytes = 16;
    private static readonly JsonSerializerOptions Format = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, WriteIndented = true };

    private readonly string _path;
    private readonly byte[] _salt;
    private readonly List<Entry> _entries;
    private readonly HashSet<string> _clips;
    private readonly Dictionary<string, string> _riders = new(StringComparer.OrdinalIgnoreCase);

    private ForgottenList(string path, byte[] salt, List<Entry> entries) =>
        (_path, _salt, _entries, _clips) = (path, salt, entries, [.. entries.SelectMany(e => e.Clips)]);

    /// <summary>How many times someone or something was forgotten.</summary>
    public int Count => _entries.Count;

    /// <exception cref="DatasetException">The file is there and cannot be read: nobody can then say who is not to be measured.</exception>
    public static ForgottenList Read(string datasetFolder)
    {
        var path = Path.Combine(datasetFolder, FileName);
        if (!File.Exists(path)) return new(path, RandomNumberGenerator.GetBytes(SaltBytes), []);
        try
        {
            var kept = JsonSerializer.Deserialize<Kept>(File.ReadAllText(path), Format) ?? throw new JsonException("it is empty");
            return new(path, Convert.FromHexString(kept.Salt), [.. kept.Entries]);
        }
        catch (Exception e) when (e is JsonException or FormatException or IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"'{path}' cannot be read ({e.Message}), so it is not known who was forgotten and must not be measured again. Restore it from a copy of the dataset.", e);
        }
    }

    public bool HasClip(string clipKey) => _clips.Count > 0 && _clips.Contains(HashOfClip(clipKey));

    public bool HasRider(string? rider) => rider is not null && _entries.Exists(e => e.Rider is not null) && HashOfRider(rider) is var hash && _entries.Exists(e => e.Rider == hash);

    /// <summary>Adds and writes; what stands there already is not added again.</summary>
    /// <param name="rider">Null where only clips are meant.</param>
    public void Add(string? rider, IEnumerable<string> clipKeys, DateOnly on)
    {
        var entry = new Entry(rider is null ? null : HashOfRider(rider), [.. clipKeys.Select(HashOfClip).Order(StringComparer.Ordinal)], on);
        if (_entries.Exists(e => e.Rider == entry.Rider && entry.Clips.All(e.Clips.Contains))) return;
        _entries.Add(entry);
        _clips.UnionWith(entry.Clips);
        Write();
    }

    /// <summary>Lets a rider be measured again: their consent was given anew.</summary>
    /// <returns>Whether the rider had been forgotten.</returns>
    public bool Allow(string rider)
    {
        var hash = HashOfRider(rider);
        if (_entries.RemoveAll(e => e.Rider == hash) == 0) return false;
        _clips.Clear();
        _clips.UnionWith(_entries.SelectMany(e => e.Clips));
        Write();
        return true;
    }

    private void Write() => AtomicFile.WriteText(_path, JsonSerializer.Serialize(new Kept(Convert.ToHexStringLower(_salt), _entries), Format) + "\n");

    private string HashOfClip(string clipKey) => Convert.ToHexStringLower(HMACSHA256.HashData(_salt, Encoding.UTF8.GetBytes(clipKey))[..HashBytes]);

    private string HashOfRider(string rider)
    {
        if (_riders.TryGetValue(rider, out var known)) return known;
        var text = Encoding.UTF8.GetBytes(rider.ToUpperInvariant());
        return _riders[rider] = Convert.ToHexStringLower(Rfc2898DeriveBytes.Pbkdf2(text, _salt, Rounds, HashAlgorithmName.SHA256, HashBytes));
    }

    private sealed record Kept(string Salt, IReadOnlyList<Entry> Entries);

    private sealed record Entry(string? Rider, IReadOnlyList<string> Clips, DateOnly On);
}
