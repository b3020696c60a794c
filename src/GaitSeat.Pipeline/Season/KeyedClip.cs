using System.Security.Cryptography;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Season;

/// <summary>A clip with the key of its bytes, and how the file lay there while they were read.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Key">See <see cref="ClipKey.OfFileAsync"/>.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="ModifiedTicksUtc">When it was last written, 100 ns ticks of UTC.</param>
public sealed record KeyedClip(string Path, string Key, long Bytes, long ModifiedTicksUtc)
{
    private static readonly string _keyOfNothing = Convert.ToHexStringLower(SHA256.HashData([]));

    public string File => System.IO.Path.GetFileName(Path);

    /// <exception cref="ClipChangedException">It was written to while it was read.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static async Task<KeyedClip> OfAsync(string path, CancellationToken ct)
    {
        var (bytes, modified) = ClipFile.StampOf(path);
        var clip = new KeyedClip(path, await HashAsync(path, bytes, ct), bytes, modified);
        clip.ThrowIfChanged();
        return clip;
    }

    /// <summary>Pipes and devices say that they hold nothing and give for ever; what has no length is not opened.</summary>
    internal static Task<string> HashAsync(string path, long bytes, CancellationToken ct) => bytes == 0 ? Task.FromResult(_keyOfNothing) : ClipKey.OfFileAsync(path, ct);

    /// <summary>What was seen of a file belongs to its key only if the file is still the one that had it.</summary>
    /// <exception cref="ClipChangedException">It is another by now, or gone.</exception>
    public void ThrowIfChanged()
    {
        try
        {
            if (ClipFile.StampOf(Path) != (Bytes, ModifiedTicksUtc)) throw new ClipChangedException(File);
        }
        catch (FileNotFoundException)
        {
            throw new ClipChangedException(File);
        }
    }

    /// <summary>Reads the file once more: one that looked damaged may only have been hard to reach.</summary>
    /// <exception cref="ClipChangedException">It is another by now, or gone.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public async Task ThrowIfUnreadableAsync(CancellationToken ct)
    {
        ThrowIfChanged();
        if (await HashAsync(Path, Bytes, ct) != Key) throw new ClipChangedException(File);
    }
}

/// <summary>A clip was replaced or taken away while it was read; what was seen of it is thrown away.</summary>
public sealed class ClipChangedException(string file) : IOException($"{file} was replaced or taken away while it was read");
