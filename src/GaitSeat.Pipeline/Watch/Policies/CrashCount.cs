using GaitSeat.Store;

namespace GaitSeat.Pipeline.Watch.Policies;

/// <summary>
/// How often a clip brought its process down, counted in a file of the dataset, so that it holds over restarts, nights and machines.
/// Another pipeline or model begins anew.
/// </summary>
public sealed class CrashCount(string path, TimeProvider time)
{
    public int Count => All.Count;

    /// <summary>The last words, for people.</summary>
    public string? Last => All is [.., var last] ? last.What : null;

    /// <returns>How many there are with this one.</returns>
    public int Add(string what)
    {
        JsonLines.Append(path, new Entry(time.GetUtcNow(), what));
        return Count;
    }

    public static CrashCount Of(WorkerDesk desk, string clipKey, string pipelineHash, string modelHash, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentException.ThrowIfNullOrEmpty(clipKey);
        var path = PathOf(desk.Folder, clipKey, pipelineHash, modelHash);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        return new(path, time);
    }

    /// <summary>Lets a clip begin at no crash again.</summary>
    /// <exception cref="IOException">The count cannot be taken away.</exception>
    public static void Forget(string datasetFolder, string clipKey, string pipelineHash, string modelHash)
    {
        ArgumentException.ThrowIfNullOrEmpty(clipKey);
        if (PathOf(Path.Combine(datasetFolder, WorkerDesk.FolderName), clipKey, pipelineHash, modelHash) is var path && File.Exists(path)) File.Delete(path);
    }

    private static string PathOf(string workerFolder, string clipKey, string pipelineHash, string modelHash) =>
        Path.Combine(workerFolder, "crashes", $"{ClipKey.InName(clipKey)}-{pipelineHash[..8]}-{modelHash[..8]}.jsonl");

    private IReadOnlyList<Entry> All => [.. JsonLines.ReadAll<Entry>(Path.GetDirectoryName(path)!, Path.GetFileName(path))];

    private sealed record Entry(DateTimeOffset At, string What);
}
