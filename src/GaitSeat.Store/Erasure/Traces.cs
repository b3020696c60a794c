using System.Buffers;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace GaitSeat.Store;

/// <summary>
/// What tells of a rider in files: the keys and file names of their clips, and the pseudonym. A key counts by its first 16 digits, as it stands in names of files; file names and the pseudonym
/// only where they stand by themselves, so that <c>R1</c> is not found in <c>R12</c>.
/// </summary>
public sealed partial class Traces
{
    private const int ShortKeyDigits = 8;
    private readonly HashSet<string> _keys;
    private readonly HashSet<string> _shortKeys;
    private readonly string[] _words;
    private readonly SearchValues<string> _search;

    /// <param name="rider">Pseudonym; null where only clips are meant.</param>
    /// <param name="clipKeys">64 hex digits each.</param>
    /// <param name="clipFiles">File names that no other clip has.</param>
    public Traces(string? rider, IEnumerable<string> clipKeys, IEnumerable<string> clipFiles)
    {
        ArgumentNullException.ThrowIfNull(clipKeys);
        ArgumentNullException.ThrowIfNull(clipFiles);
        Rider = rider;
        ClipKeys = clipKeys.ToHashSet(StringComparer.Ordinal);
        ClipFiles = clipFiles.ToHashSet(StringComparer.Ordinal);
        _keys = [.. ClipKeys.Select(ClipKey.InName)];
        _shortKeys = [.. ClipKeys.Select(k => k[..ShortKeyDigits])];
        RiderIsAWordOfOurs = rider is not null && OurWords.Contains(rider);
        _words = [.. ClipFiles.Concat(rider is null || RiderIsAWordOfOurs ? [] : [rider]).SelectMany(Spellings).Distinct(StringComparer.Ordinal)];
        _search = SearchValues.Create(_words, StringComparison.Ordinal);
    }

    public string? Rider { get; }

    public IReadOnlySet<string> ClipKeys { get; }

    public IReadOnlySet<string> ClipFiles { get; }

    /// <summary>Whether the pseudonym is also a word of the tables, so that it is looked for in the columns for riders alone.</summary>
    public bool RiderIsAWordOfOurs { get; }

    /// <summary>Whether a trace stands in a text. Text of a binary file is its bytes as Latin-1.</summary>
    public bool In(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return HasKey(text) || HasWord(text);
    }

    /// <summary>Whether a relative path tells of the rider: by a key, a clip's name, or a folder <c>rider=…</c>.</summary>
    public bool InPath(string relativePath)
    {
        ArgumentNullException.ThrowIfNull(relativePath);
        var decoded = Uri.UnescapeDataString(relativePath);
        if (HasKey(decoded) || HasWord(decoded)) return true;
        if (Rider is not null && decoded.Split('/', '\\').Contains($"rider={Rider}", StringComparer.Ordinal)) return true;
        return ShortHex().EnumerateMatches(decoded) is var runs && Any(runs, decoded, ShortKeyDigits, _shortKeys);
    }

    private bool HasKey(string text) => _keys.Count > 0 && Any(Hex().EnumerateMatches(text), text, ClipKey.NameDigits, _keys);

    private static bool Any(Regex.ValueMatchEnumerator runs, string text, int digits, HashSet<string> keys)
    {
        var lookup = keys.GetAlternateLookup<ReadOnlySpan<char>>();
        foreach (var run in runs)
        {
            if (lookup.Contains(text.AsSpan(run.Index, digits))) return true;
        }

        return false;
    }

    private bool HasWord(string text)
    {
        if (_words.Length == 0) return false;
        for (var at = 0; at < text.Length; at++)
        {
            var next = text.AsSpan(at).IndexOfAny(_search);
            if (next < 0) return false;
            at += next;
            if (_words.Any(w => StandsAt(text, at, w))) return true;
        }

        return false;
    }

    private static bool StandsAt(string text, int at, string word) =>
        string.CompareOrdinal(text, at, word, 0, word.Length) == 0 && !(at > 0 && IsWordLetter(text[at - 1])) && !(at + word.Length < text.Length && IsWordLetter(text[at + word.Length]));

    private static bool IsWordLetter(char c) => char.IsAsciiLetterOrDigit(c) || c > 0x7F;

    /// <summary>As it is, and as JSON, HTML and Markdown write it; each also as its UTF-8 bytes look when taken for Latin-1.</summary>
    private static IEnumerable<string> Spellings(string word)
    {
        string[] spelt = [word, WebUtility.HtmlEncode(word), System.Text.Json.JsonEncodedText.Encode(word).ToString(), Markdown().Replace(word, @"\$0"), Uri.EscapeDataString(word)];
        return spelt.Concat(spelt.Select(s => Encoding.Latin1.GetString(Encoding.UTF8.GetBytes(s))));
    }

    private static HashSet<string> OurWords { get; } = TableList.All.SelectMany(t => t.Columns.Select(c => c.Name).Append(t.Name))
        .Concat(["left", "right", "good", "measured", "set_aside", "walk", "halt", "canter", "rising_trot", "sitting_trot", "clip", "frame", "worker", "rider", "model"]).ToHashSet(StringComparer.OrdinalIgnoreCase);

    [GeneratedRegex("(?<![0-9a-f])[0-9a-f]{16,}")]
    private static partial Regex Hex();

    [GeneratedRegex("(?<![0-9A-Za-z])[0-9a-f]{8}(?![0-9A-Za-z])")]
    private static partial Regex ShortHex();

    [GeneratedRegex(@"[\\`*_{}\[\]()<>#!|~&@]")]
    private static partial Regex Markdown();
}
