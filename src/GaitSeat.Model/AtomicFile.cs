namespace GaitSeat.Model;

/// <summary>Makes a file appear whole or not at all: written under a temporary name in the same folder, flushed to the disk, then renamed over whatever stood there.</summary>
public static class AtomicFile
{
    /// <summary>How the names of files end that are not whole yet.</summary>
    public const string TemporaryExtension = ".tmp";

    /// <param name="path">Where it appears; a file of that name is replaced, its folder made.</param>
    /// <param name="write">Writes the file under the temporary name it is given.</param>
    /// <returns>What <paramref name="write"/> returned.</returns>
    /// <exception cref="IOException">It cannot be written; nothing is left behind.</exception>
    public static T Write<T>(string path, Func<string, T> write)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(write);
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        var temporary = $"{path}.{Guid.NewGuid():N}{TemporaryExtension}";
        try
        {
            var result = write(temporary);
            using (var stream = new FileStream(temporary, FileMode.Open, FileAccess.ReadWrite)) stream.Flush(flushToDisk: true);
            File.Move(temporary, path, overwrite: true);
            return result;
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }
    }

    /// <inheritdoc cref="Write{T}"/>
    /// <param name="path">Where it appears; a file of that name is replaced, its folder made.</param>
    /// <param name="write">Writes the file's bytes.</param>
    public static void WriteBytes(string path, Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        Write(path, temporary =>
        {
            using var file = File.Create(temporary);
            write(file);
            return file.Length;
        });
    }

    /// <inheritdoc cref="Write{T}"/>
    /// <param name="path">Where it appears; a file of that name is replaced, its folder made.</param>
    /// <param name="text">Written as UTF-8 without a mark.</param>
    public static void WriteText(string path, string text) => Write(path, temporary =>
    {
        File.WriteAllText(temporary, text);
        return text.Length;
    });
}
