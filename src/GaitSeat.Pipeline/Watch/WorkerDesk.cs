using GaitSeat.Pipeline.Season;

namespace GaitSeat.Pipeline.Watch;

/// <summary>
/// A worker's own place in the dataset's <c>worker</c> folder, under a name no other running worker has: <c>machine-1</c>, <c>machine-2</c>... A name is free again
/// as soon as its process is gone, however it went: what claims it is a lock the system takes away.
/// </summary>
public sealed class WorkerDesk : IDisposable
{
    /// <summary>The folder within the dataset that all workers share.</summary>
    public const string FolderName = "worker";

    private const int MostPerMachine = 256;
    private readonly FileStream _claim;

    private WorkerDesk(string folder, string name, FileStream claim) => (Folder, Name, _claim) = (folder, name, claim);

    /// <summary>The dataset's <c>worker</c> folder, shared by all workers.</summary>
    public string Folder { get; }

    public string Name { get; }

    /// <exception cref="SeasonException">The folder cannot be written to.</exception>
    public static WorkerDesk Claim(string datasetFolder, string machine)
    {
        var folder = Path.Combine(datasetFolder, FolderName);
        var names = Directory.CreateDirectory(Path.Combine(folder, "names")).FullName;
        var plain = string.Concat(machine.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '_'));
        for (var i = 1; i <= MostPerMachine; i++)
            if (FileLock.TryTake(Path.Combine(names, $"{plain}-{i}.lock")) is { } claim) return new(folder, $"{plain}-{i}", claim);
        throw new SeasonException($"'{names}' gives no free name: {MostPerMachine} workers of this machine run already, or the folder cannot be locked");
    }

    /// <summary>A file of this worker's alone in a folder that all share.</summary>
    public string FileOf(string shared, string ending) => Path.Combine(Directory.CreateDirectory(Path.Combine(Folder, shared)).FullName, Name + ending);

    public void Dispose() => _claim.Dispose();
}
