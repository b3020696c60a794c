using System.Security.Cryptography;
using GaitSeat.Model;
using Parquet;

namespace GaitSeat.Store;

/// <summary>
/// Makes a Parquet file appear whole or not at all: written under a temporary name in the same folder, flushed to the disk,
/// read back and checked, then renamed over whatever stood there. Two writers of the same clip write the same bytes; the last rename wins.
/// </summary>
internal static class AtomicParquet
{
    internal static Task WriteAsync(Table table, ClipRecord record, string path, CancellationToken cancellationToken) =>
        WriteAsync(table, stream => table.WriteAsync(record, stream, cancellationToken), path, cancellationToken);

    /// <param name="write">Writes the table's rows and says how many.</param>
    internal static async Task WriteAsync(Table table, Func<Stream, Task<int>> write, string path, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var temporary = $"{path}.{Guid.NewGuid():N}{AtomicFile.TemporaryExtension}";
        try
        {
            // FileShare.Delete: Windows renames an open file only with it. The open handle marks the file as in use, see Leftovers.
            await using var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Delete);
            var rows = await write(stream);
            stream.Flush(flushToDisk: true);
            stream.Position = 0;
            await CheckAsync(table, rows, stream, path, cancellationToken);
            if (await IsSameAsync(stream, path, cancellationToken)) File.Delete(temporary);
            else File.Move(temporary, path, overwrite: true);
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }
    }

    /// <summary>A file that already holds these bytes stays as it is, time of writing and all.</summary>
    private static async Task<bool> IsSameAsync(FileStream written, string path, CancellationToken cancellationToken)
    {
        if (!File.Exists(path) || new FileInfo(path).Length != written.Length) return false;
        written.Position = 0;
        var hash = await SHA256.HashDataAsync(written, cancellationToken);
        await using var standing = File.OpenRead(path);
        var there = await SHA256.HashDataAsync(standing, cancellationToken);
        return hash.AsSpan().SequenceEqual(there);
    }

    private static async Task CheckAsync(Table table, int rows, Stream stream, string path, CancellationToken cancellationToken)
    {
        await using var reader = await ParquetReader.CreateAsync(stream, leaveStreamOpen: true, cancellationToken: cancellationToken);
        var found = reader.RowGroups.Sum(g => g.RowCount);
        if (found != rows) throw new DatasetException($"'{path}' reads back {found} rows; {rows} were written. Check the disk, then run again.");
        if (!reader.Schema.Equals(table.NewSchema()))
        {
            throw new DatasetException($"'{path}' reads back another schema than was written: {reader.Schema.GetNotEqualsMessage(table.NewSchema(), "read", "written")}");
        }
    }
}
