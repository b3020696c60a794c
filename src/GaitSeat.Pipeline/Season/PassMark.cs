using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Season;

/// <summary>
/// What a table of a whole run (sessions, flags) was last made from, so that a finished season of thousands of clips is not read again to find the same. Only a shortcut:
/// without the file, or when any file of the table or of its sources is new, gone or written again, the pass is made.
/// </summary>
/// <param name="made">The table that is made.</param>
/// <param name="sources">Tables it is made from.</param>
/// <param name="run">Whatever else it depends on: hashes, version.</param>
internal sealed class PassMark(Dataset dataset, string made, IReadOnlyList<string> sources, string run)
{
    private const int NameDigits = 12;

    private string FilePath => Path.Combine(dataset.Folder, "worker", made, Hash(run)[..NameDigits] + ".json");

    /// <summary>The lines of the pass, or those of the last one where it would be the same today.</summary>
    public async Task<IReadOnlyList<string>> LinesAsync(Func<Task<IReadOnlyList<string>>> pass)
    {
        // Before the sources are read: what comes in later is not in it.
        var ofSources = Of(sources);
        if (File.Exists(FilePath) && JsonLines.Parse<Mark>(File.ReadAllText(FilePath)) is { } mark && mark.Sources == ofSources && mark.Made == Of([made])) return mark.Lines;
        var lines = await pass();
        Directory.CreateDirectory(Path.GetDirectoryName(FilePath)!);
        // Written straight away: a torn one is taken for none.
        await File.WriteAllTextAsync(FilePath, JsonLines.Line(new Mark(ofSources, Of([made]), lines)));
        return lines;
    }

    private string Of(IEnumerable<string> tables)
    {
        var files = tables.SelectMany(dataset.FilesOf).Select(f => new FileInfo(f)).Select(f => string.Create(CultureInfo.InvariantCulture, $"{f.Name}|{f.Length}|{f.LastWriteTimeUtc.Ticks}"));
        return Hash(string.Join('\n', files));
    }

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private sealed record Mark(string Sources, string Made, IReadOnlyList<string> Lines);
}
