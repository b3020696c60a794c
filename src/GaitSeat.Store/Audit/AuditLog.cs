using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>One line of the audit log: who saw or was given what.</summary>
/// <param name="Who">Pseudonym of who did it.</param>
/// <param name="Act">A word such as <c>exported</c>, <c>reported</c>, <c>shown</c>, <c>forgot</c>.</param>
/// <param name="What">A few words: the format, the page.</param>
/// <param name="Riders">Pseudonyms of those seen in it.</param>
/// <param name="Clips">First 16 digits of the clips' keys.</param>
/// <param name="Where">Where it went; null where it stayed on the screen.</param>
public sealed record AuditEntry(DateTimeOffset At, string Who, string Act, string What, IReadOnlyList<string> Riders, IReadOnlyList<string> Clips, string? Where);

/// <summary>
/// Who saw and exported what: <c>audit.jsonl</c> in the dataset, a JSON object a line, which is only added to. The one who forgets a rider takes the rider's pseudonym and clips out of it; the lines stay.
/// Whoever may write to the dataset may also change this file: it tells of honest use, and is no proof against a dishonest one.
/// </summary>
public sealed class AuditLog(string datasetFolder)
{
    public const string FileName = "audit.jsonl";

    /// <summary>What stands in place of a rider who was forgotten.</summary>
    public const string Forgotten = "(forgotten)";

    private const int Tries = 50, PauseMilliseconds = 20;
    private static readonly JsonSerializerOptions Format = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private readonly string _path = Path.Combine(datasetFolder, FileName);

    /// <summary>Adds a line; it is on the disk when this returns.</summary>
    /// <param name="clips">Keys, of which the first 16 digits are kept.</param>
    /// <exception cref="DatasetException">It cannot be written: what is not logged must not be handed out.</exception>
    public void Add(DateTimeOffset at, string who, string act, string what, IEnumerable<string?> riders, IEnumerable<string> clips, string? where)
    {
        ArgumentNullException.ThrowIfNull(riders);
        ArgumentNullException.ThrowIfNull(clips);
        var entry = new AuditEntry(
            at.ToUniversalTime(), who, act, what, [.. riders.OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            [.. clips.Select(c => c[..Math.Min(ClipKey.NameDigits, c.Length)]).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)], where);
        Alone(stream =>
        {
            var torn = stream.Length > 0 && Last(stream) != '\n';
            stream.Seek(0, SeekOrigin.End);
            stream.Write(Encoding.UTF8.GetBytes((torn ? "\n" : "") + JsonSerializer.Serialize(entry, Format) + "\n"));
            stream.Flush(flushToDisk: true);
        });
    }

    /// <summary>All whole lines, oldest first; a line torn by a crash is passed over.</summary>
    public IReadOnlyList<AuditEntry> Read()
    {
        if (!File.Exists(_path)) return [];
        using var reader = new StreamReader(new FileStream(_path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
        return [.. reader.ReadToEnd().Split('\n').Select(Parse).OfType<AuditEntry>()];
    }

    /// <summary>Takes a rider's pseudonym and clips out of every line; the lines stay. The file is written anew, whole or not at all.</summary>
    /// <returns>How many lines were changed.</returns>
    public int Forget(Traces traces)
    {
        if (!File.Exists(_path)) return 0;
        var lines = File.ReadAllText(_path).Split('\n');
        // The others in a line stay: what was handed out to whom is still known.
        var cleaned = lines.Select(l => Touches(l, traces) ? Clean(l, traces) : l).ToArray();
        var changed = lines.Zip(cleaned).Count(p => p.First != p.Second);
        if (changed > 0) AtomicFile.WriteText(_path, string.Join('\n', cleaned.Where((l, i) => l.Length > 0 || i == cleaned.Length - 1)));
        return changed;
    }

    /// <summary>How many lines that would change.</summary>
    public int Count(Traces traces) => File.Exists(_path) ? File.ReadLines(_path).Count(l => Touches(l, traces)) : 0;

    private static bool Touches(string line, Traces traces) => traces.In(line) || (Parse(line) is { } entry && entry.Riders.Any(r => IsTheirs(r, traces)));

    private static string Clean(string line, Traces traces)
    {
        // A torn line that tells of the rider has no parts to keep.
        if (Parse(line) is not { } entry) return "";
        string? Tame(string? text) => text is not null && traces.In(text) ? Forgotten : text;
        var riders = entry.Riders.Select(r => IsTheirs(r, traces) ? Forgotten : r).Distinct(StringComparer.Ordinal).ToArray();
        return JsonSerializer.Serialize(entry with { Riders = riders, Clips = [.. entry.Clips.Where(c => !traces.In(c))], Who = Tame(entry.Who)!, What = Tame(entry.What)!, Where = Tame(entry.Where) }, Format);
    }

    private static bool IsTheirs(string rider, Traces traces) => rider == traces.Rider || traces.In(rider);

    private static AuditEntry? Parse(string line)
    {
        try
        {
            return line.Length == 0 ? null : JsonSerializer.Deserialize<AuditEntry>(line, Format);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>Review page and commands may write at the same time; each waits its turn.</summary>
    private void Alone(Action<FileStream> write)
    {
        for (var left = Tries; ; left--)
        {
            try
            {
                using var stream = new FileStream(_path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
                write(stream);
                return;
            }
            catch (IOException) when (left > 0)
            {
                Thread.Sleep(PauseMilliseconds);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                throw new DatasetException($"'{_path}' could not be written ({e.Message}), and what is not logged is not handed out. Check rights and room on the disk, then try again.", e);
            }
        }
    }

    private static int Last(FileStream stream)
    {
        stream.Seek(-1, SeekOrigin.End);
        return stream.ReadByte();
    }
}
