using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace GaitSeat.Store;

/// <summary>Rows that people add to a clip: each addition is a file of its own, named by the clip and by what is in it. Nothing is written over, and the same addition made twice stands once.</summary>
internal static class AddedRows
{
    private const int ContentDigits = 24;

    /// <summary>What is not measured is NaN in memory.</summary>
    private static readonly JsonSerializerOptions Content = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    /// <summary>On the disk when this returns.</summary>
    /// <param name="rows">Of one clip.</param>
    /// <exception cref="DatasetException">The file could not be written.</exception>
    internal static async Task WriteAsync<T>(Dataset dataset, Table<T> table, string clipKey, string clipFile, IReadOnlyList<T> rows, CancellationToken cancellationToken)
    {
        var content = Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(rows, Content)))[..ContentDigits];
        var path = Path.Combine(dataset.Folder, table.Name, RunName.ClipPart(clipKey) + content + RunName.Extension);
        if (File.Exists(path)) return;
        try
        {
            await AtomicParquet.WriteAsync(table, stream => table.WriteAsync(rows, stream, cancellationToken), path, cancellationToken);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"The {table.Name} on clip '{clipFile}' could not be written to '{path}' ({e.Message}). Check rights and room on the disk, then do it again: what was written already is not doubled.", e);
        }
    }
}
