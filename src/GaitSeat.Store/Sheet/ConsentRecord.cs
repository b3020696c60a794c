using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// How far each rider's consent reached when a run last read the sheet: <c>consent.jsonl</c> in the dataset, a rider a line. Commands that read the dataset alone ask it, since they do not know where the sheet
/// lies. The last day is looked at when it is asked, so that a consent ends by itself.
/// </summary>
public sealed class ConsentRecord
{
    public const string FileName = "consent.jsonl";

    private static readonly JsonSerializerOptions Format = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private readonly SortedDictionary<string, Line> _riders = new(StringComparer.OrdinalIgnoreCase);
    private readonly string _path;

    private ConsentRecord(string path) => _path = path;

    /// <summary>Whether nothing was ever recorded.</summary>
    public bool IsEmpty => _riders.Count == 0;

    /// <exception cref="DatasetException">It is there and cannot be read: nobody can then say who agreed to what.</exception>
    public static ConsentRecord Read(string datasetFolder)
    {
        var record = new ConsentRecord(Path.Combine(datasetFolder, FileName));
        if (!File.Exists(record._path)) return record;
        try
        {
            foreach (var text in File.ReadLines(record._path).Where(l => l.Length > 0))
            {
                var line = JsonSerializer.Deserialize<Line>(text, Format) ?? throw new JsonException("a line is empty");
                record._riders[line.Rider] = line;
            }

            return record;
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"'{record._path}' cannot be read ({e.Message}), so it is not known who agreed to what. Delete it and run 'gaitseat process' on the clips again: it is written anew from the sheet.", e);
        }
    }

    /// <summary>What the record says of a rider on a day; null where it says nothing.</summary>
    public ConsentTerms? Of(string? rider, DateOnly today) => rider is not null && _riders.TryGetValue(rider, out var line)
        ? new(ConsentFile.UsesOf(line.Scope), line.Until, line.Until < today ? ConsentStanding.Ended : ConsentStanding.Given)
        : null;

    /// <summary>Takes the riders of a sheet in; of others what stood there holds. Written only where it changes.</summary>
    /// <exception cref="DatasetException">It cannot be written.</exception>
    public void Keep(IEnumerable<Session> sessions)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        var before = _riders.Values.ToArray();
        foreach (var (rider, terms) in sessions.Where(s => s.Rider is not null && s.Terms.Standing != ConsentStanding.Forgotten).Select(s => (s.Rider!, s.Terms)))
            _riders[rider] = new(rider, terms.Standing == ConsentStanding.NotNamed ? "" : ConsentFile.Words(terms.Uses), terms.Until);
        if (!_riders.Values.SequenceEqual(before)) Write();
    }

    /// <summary>Takes a rider out.</summary>
    public void Forget(string? rider)
    {
        if (rider is not null && _riders.Remove(rider)) Write();
    }

    private void Write()
    {
        try
        {
            AtomicFile.WriteText(_path, string.Concat(_riders.Values.Select(l => string.Create(CultureInfo.InvariantCulture, $"{JsonSerializer.Serialize(l, Format)}\n"))));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"'{_path}' could not be written ({e.Message}). Check rights and room on the disk.", e);
        }
    }

    private sealed record Line(string Rider, string Scope, DateOnly? Until);
}
