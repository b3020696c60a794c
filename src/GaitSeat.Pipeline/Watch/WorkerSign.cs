using System.Text.Json;

namespace GaitSeat.Pipeline.Watch;

/// <summary>What a worker's log tells of it, for who looks on from another program.</summary>
/// <param name="Worker">Machine and process, as the log's file is named.</param>
/// <param name="LastWord">When the log's last line was written.</param>
/// <param name="Says">The last line, for people.</param>
/// <param name="InHand">Clips begun and not ended, with the time they were begun.</param>
/// <param name="Paused">Why it pauses; null where it does not.</param>
public sealed record WorkerSign(string Worker, DateTimeOffset LastWord, string Says, IReadOnlyDictionary<string, DateTimeOffset> InHand, string? Paused)
{
    private const int DayDigits = 8;

    /// <summary>The workers that wrote since a time, the latest word first. Only the newest files of a worker are read.</summary>
    public static IReadOnlyList<WorkerSign> Read(string workerFolder, DateTimeOffset since)
    {
        var folder = new DirectoryInfo(Path.Combine(workerFolder, "logs"));
        if (!folder.Exists) return [];
        return
        [
            .. folder.EnumerateFiles("*.jsonl").Where(f => f.LastWriteTimeUtc >= since.UtcDateTime).GroupBy(f => WorkerOf(f.Name), StringComparer.Ordinal)
                .Select(g => Of(g.Key, g.OrderBy(f => f.LastWriteTimeUtc).SelectMany(f => Lines(f.FullName)))).OfType<WorkerSign>().OrderByDescending(s => s.LastWord),
        ];
    }

    /// <summary>File names are <c>machine-process-day</c>, with <c>_001</c> and so on where one day fills several.</summary>
    private static string WorkerOf(string file)
    {
        var name = Path.GetFileNameWithoutExtension(file);
        var last = name.LastIndexOf('-');
        return last > 0 && name.Length - last > DayDigits ? name[..last] : name;
    }

    private static WorkerSign? Of(string worker, IEnumerable<JsonElement> lines)
    {
        var inHand = new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal);
        (DateTimeOffset At, string Says)? last = null;
        string? paused = null;
        foreach (var line in lines)
        {
            if (!line.TryGetProperty("@t", out var time) || !time.TryGetDateTimeOffset(out var at) || Text(line, "@mt") is not { } template) continue;
            var clip = Text(line, "Clip");
            if (template.StartsWith("begins ", StringComparison.Ordinal) && clip is not null) inHand[clip] = at;
            else if (template.StartsWith("ends ", StringComparison.Ordinal) && clip is not null) inHand.Remove(clip);
            else if (template.StartsWith("pauses: ", StringComparison.Ordinal)) paused = Text(line, "Why");
            else if (template.StartsWith("goes on: ", StringComparison.Ordinal)) paused = null;
            last = (at, Text(line, "Text") ?? template.Split(' ')[0]);
        }

        return last is { } l ? new(worker, l.At, l.Says, inHand, paused) : null;
    }

    private static string? Text(JsonElement line, string name) => line.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    /// <summary>A line torn by a crash is passed over.</summary>
    private static IEnumerable<JsonElement> Lines(string path)
    {
        using var reader = new StreamReader(new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
        while (reader.ReadLine() is { } line)
        {
            JsonElement? parsed = null;
            try
            {
                parsed = JsonDocument.Parse(line).RootElement;
            }
            catch (JsonException)
            {
                // Torn.
            }

            if (parsed is { ValueKind: JsonValueKind.Object } whole) yield return whole;
        }
    }
}
