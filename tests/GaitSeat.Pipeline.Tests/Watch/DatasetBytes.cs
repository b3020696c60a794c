using System.Security.Cryptography;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>Tables and pictures of a dataset by name and hash, to be compared; without the worker's own folder.</summary>
internal static class DatasetBytes
{
    public static SortedDictionary<string, string> Of(string dataset) => new(
        Directory.EnumerateFiles(dataset, "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(dataset, f))
            .Where(f => !f.StartsWith("worker" + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            .ToDictionary(f => f, f => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(dataset, f))))),
        StringComparer.Ordinal);
}
