using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Season;

/// <summary>
/// What the sessions of a run were last made from, so that a finished season of thousands of clips is not read again to find the same. Only a shortcut: without the
/// file, or when any strides or sessions file is new, gone or written again, the pass is made.
/// </summary>
/// <param name="run">Whatever else the sessions depend on: hashes, version.</param>
internal sealed class SessionMark(Dataset dataset, string run)
{
    private const int NameDigits = 12;

    private string FilePath => Path.Combine(dataset.Folder, "worker", "sessions", Hash(run)[..NameDigits] + ".json");

    /// <summary>To be asked before the strides are read: what comes in later is not in it.</summary>
    public string OfStrides() => Of("strides");

    /// <summary>The lines that the last pass gave; null where it would not be the same today.</summary>
    public IReadOnlyList<string>? Lines(string ofStrides) =>
        File.Exists(FilePath) && JsonLines.Parse<Mark>(File.ReadAllText(FilePath)) is { } mark && mark.Strides == ofStrides && mark.Sessions == Of("sessions") ? mark.Lines : null;

    /// <summary>Written straight away: a torn one is taken for none.</summary>
    public void Keep(string ofStrides, IReadOnlyList<string> lines)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(FilePath)!);
        File.WriteAllText(FilePath, JsonLines.Line(new Mark(ofStrides, Of("sessions"), lines)));
    }

    private string Of(string table)
    {
        var files = dataset.FilesOf(table).Select(f => new FileInfo(f)).Select(f => string.Create(CultureInfo.InvariantCulture, $"{f.Name}|{f.Length}|{f.LastWriteTimeUtc.Ticks}"));
        return Hash(string.Join('\n', files));
    }

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private sealed record Mark(string Strides, string Sessions, IReadOnlyList<string> Lines);
}
