using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Parquet;

namespace GaitSeat.Store;

/// <summary>
/// The files of the sessions table: <c>session-run.parquet</c>, the session a hash over day, rider and horse. They are made anew from the strides at the end
/// of every run, so nothing is lost when one is taken away.
/// </summary>
internal sealed class SessionFiles(string folder)
{
    private const int SessionDigits = 16;

    public async Task WriteAsync(IReadOnlyList<SessionRecord> sessions, string pipelineHash, string modelHash, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        var run = RunName.RunPart(pipelineHash, modelHash);
        var names = sessions.Select(s => NameOf(s.Session) + run).ToHashSet(StringComparer.Ordinal);
        if (names.Count < sessions.Count) throw new ArgumentException("A session stands twice among those to be written.", nameof(sessions));
        try
        {
            foreach (var stale in Directory.EnumerateFiles(folder, "*-" + run).Where(f => !names.Contains(Path.GetFileName(f))).ToList()) File.Delete(stale);
            foreach (var session in sessions)
            {
                var path = Path.Combine(folder, NameOf(session.Session) + run);
                var rows = SessionsTable.RowsOf(session);
                await AtomicParquet.WriteAsync(SessionsTable.Table, stream => SessionsTable.Table.WriteAsync(rows, stream, cancellationToken), path, cancellationToken);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new DatasetException($"The sessions could not be written to '{folder}' ({e.Message}). Check rights and room on the disk, then run again.", e);
        }
    }

    /// <summary>Takes away the sessions that a clip belonged to, of all runs; one that cannot be read goes too, it is made anew.</summary>
    /// <returns>How many files were taken away.</returns>
    public int Erase(string clipKey)
    {
        var files = Directory.EnumerateFiles(folder, "*" + RunName.Extension).Where(f => MayHold(f, clipKey)).ToList();
        files.ForEach(File.Delete);
        return files.Count;
    }

    private static bool MayHold(string path, string clipKey)
    {
        try
        {
            return ClipKeysAsync(path).GetAwaiter().GetResult().Any(keys => keys?.Contains(clipKey, StringComparison.Ordinal) != false);
        }
        catch (Exception e) when (e is IOException or InvalidDataException)
        {
            return true;
        }
    }

    private static async Task<string?[]> ClipKeysAsync(string path)
    {
        await using var reader = await ParquetReader.CreateAsync(path);
        if (reader.RowGroupCount == 0) return [];
        using var group = reader.OpenRowGroupReader(0);
        var keys = new string?[group.RowCount];
        await group.ReadAsync(reader.Schema.FindDataField("clip_keys"), keys.AsMemory());
        return keys;
    }

    private static string NameOf(SessionKey session)
    {
        var text = string.Create(CultureInfo.InvariantCulture, $"{session.Date:yyyy-MM-dd}\n{session.Rider}\n{session.Horse}");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..SessionDigits] + "-";
    }
}
