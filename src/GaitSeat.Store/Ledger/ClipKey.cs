using System.Security.Cryptography;

namespace GaitSeat.Store;

/// <summary>Names a clip by what is in it, so that a copy or a renamed file is the same clip.</summary>
public static class ClipKey
{
    /// <summary>Digits by which files that belong to a clip are named and found again, in an erasure too.</summary>
    public const int NameDigits = 16;

    private const int ReadBufferBytes = 1 << 20;

    /// <summary>The beginning of a key that stands in names of files.</summary>
    public static string InName(string clipKey)
    {
        ArgumentNullException.ThrowIfNull(clipKey);
        return clipKey[..NameDigits];
    }

    /// <summary>SHA-256 of the file's bytes, 64 lower-case hex digits, read as a stream.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static async Task<string> OfFileAsync(string path, CancellationToken cancellationToken)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var options = new FileStreamOptions
        {
            Access = FileAccess.Read,
            Share = FileShare.ReadWrite | FileShare.Delete,
            BufferSize = ReadBufferBytes,
            Options = FileOptions.Asynchronous | FileOptions.SequentialScan,
        };
        await using var stream = new FileStream(path, options);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancellationToken));
    }
}
