using System.Security.Cryptography;
using GaitSeat.Studio.Accuracy.Marks;

namespace GaitSeat.Cli.Marks;

/// <summary>Finds marked stills and clips in a folder and those below it, by the hash of their bytes; what they are called does not matter.</summary>
internal sealed class MarkedFootage
{
    private readonly Dictionary<string, string> _pathByHash = new(StringComparer.Ordinal);

    /// <param name="folder">Where the footage lies.</param>
    /// <param name="pictures">What is looked for.</param>
    public MarkedFootage(string folder, IReadOnlyList<MarkedPicture> pictures)
    {
        var endings = pictures.Select(p => Path.GetExtension(p.Picture)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var path in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Where(p => endings.Contains(Path.GetExtension(p))).Order(StringComparer.Ordinal))
        {
            using var stream = File.OpenRead(path);
            _pathByHash.TryAdd(Convert.ToHexStringLower(SHA256.HashData(stream)), path);
        }
    }

    /// <summary>Where the picture's file lies; null where it is not in the folder.</summary>
    public string? Find(MarkedPicture picture) => _pathByHash.GetValueOrDefault(picture.Sha256);
}
