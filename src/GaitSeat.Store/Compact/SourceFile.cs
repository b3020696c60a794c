using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace GaitSeat.Store;

/// <summary>A file of a clip as the folder lists it.</summary>
internal sealed record SourceFile(string Name, long Bytes, long Ticks)
{
    /// <summary>The Parquet files of a folder by name; none where there is no folder.</summary>
    internal static IReadOnlyDictionary<string, SourceFile> In(string folder) => Directory.Exists(folder)
        ? new DirectoryInfo(folder).EnumerateFiles("*" + RunName.Extension).ToDictionary(f => f.Name, f => new SourceFile(f.Name, f.Length, f.LastWriteTimeUtc.Ticks), StringComparer.Ordinal)
        : new Dictionary<string, SourceFile>();

    /// <summary>Changes when any of the files is replaced, added or taken away: a clip's file is only ever replaced whole, with a new time.</summary>
    internal static string Fingerprint(IEnumerable<SourceFile> files)
    {
        var text = new StringBuilder();
        foreach (var f in files.OrderBy(f => f.Name, StringComparer.Ordinal)) text.Append(CultureInfo.InvariantCulture, $"{f.Name}|{f.Bytes}|{f.Ticks}\n");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
