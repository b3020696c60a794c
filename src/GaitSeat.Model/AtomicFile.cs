namespace GaitSeat.Store;

/// <summary>Makes a file appear whole or not at all.</summary>
internal static class AtomicFile
{
    /// <param name="path">Where it appears; a file of that name is replaced, its folder made.</param>
    /// <param name="write">Writes the file under the temporary name it is given.</param>
    /// <returns>What <paramref name="write"/> returned.</returns>
    internal static T Write<T>(string path, Func<string, T> write)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var temporary = $"{path}.{Guid.NewGuid():N}{AtomicParquet.TemporaryExtension}";
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

    internal static void WriteText(string path, string text) => Write(path, temporary =>
    {
        File.WriteAllText(temporary, text);
        return text.Length;
    });
}
