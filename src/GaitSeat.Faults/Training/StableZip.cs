using System.IO.Compression;

namespace GaitSeat.Faults.Training;

/// <summary>A zip archive without its clock: entries in the order of their names, all of one date, so that equal contents are equal bytes.</summary>
internal static class StableZip
{
    /// <summary>The earliest date a zip entry can bear.</summary>
    private static readonly DateTimeOffset Epoch = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    internal static byte[] Of(byte[] zip)
    {
        using var source = new ZipArchive(new MemoryStream(zip), ZipArchiveMode.Read);
        using var stream = new MemoryStream();
        using (var target = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var entry in source.Entries.OrderBy(e => e.FullName, StringComparer.Ordinal))
            {
                var copy = target.CreateEntry(entry.FullName, CompressionLevel.Optimal);
                copy.LastWriteTime = Epoch;
                using var from = entry.Open();
                using var to = copy.Open();
                from.CopyTo(to);
            }
        }

        return stream.ToArray();
    }
}
