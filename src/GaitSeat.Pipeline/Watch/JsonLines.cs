using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace GaitSeat.Pipeline.Watch;

/// <summary>Small facts kept as one JSON object a line. A line torn by a crash is passed over; what it said is found out again.</summary>
internal static class JsonLines
{
    private static readonly JsonSerializerOptions _options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Line<T>(T value) => JsonSerializer.Serialize(value, _options);

    /// <summary>Adds a line. It begins with a line break of its own where the one before was torn.</summary>
    public static void Append<T>(string path, T value)
    {
        using var stream = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read);
        var torn = stream.Length > 0 && LastByte(stream) != '\n';
        stream.Seek(0, SeekOrigin.End);
        stream.Write(System.Text.Encoding.UTF8.GetBytes((torn ? "\n" : "") + Line(value) + "\n"));
    }

    public static T? Parse<T>(string line)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(line, _options);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>All whole lines of all files of a folder that match; a folder that is not there holds none.</summary>
    public static IEnumerable<T> ReadAll<T>(string folder, string pattern)
        where T : class =>
        Directory.Exists(folder)
            ? Directory.EnumerateFiles(folder, pattern).Order(StringComparer.Ordinal).SelectMany(Lines).Select(Parse<T>).OfType<T>()
            : [];

    private static IEnumerable<string> Lines(string path)
    {
        // Another worker may be writing to it.
        using var reader = new StreamReader(new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
        while (reader.ReadLine() is { } line) yield return line;
    }

    private static int LastByte(FileStream stream)
    {
        stream.Seek(-1, SeekOrigin.End);
        return stream.ReadByte();
    }
}
