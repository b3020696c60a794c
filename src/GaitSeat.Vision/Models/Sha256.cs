using System.Security.Cryptography;

namespace GaitSeat.Vision.Models;

/// <summary>SHA-256 as lower-case hex.</summary>
internal static class Sha256
{
    public static string Of(params ReadOnlySpan<byte[]> parts)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var part in parts) hash.AppendData(part);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    public static string OfFile(string path)
    {
        using var stream = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
