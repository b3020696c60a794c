using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch;

namespace GaitSeat.Pipeline.Privacy;

/// <summary>Keeps workers off a dataset: holds every name a worker might be known by. None of those that are there may be in use.</summary>
internal sealed class WorkersAway : IDisposable
{
    private readonly string _folder;
    private readonly List<FileStream> _locks = [];

    private WorkersAway(string folder) => _folder = folder;

    /// <exception cref="SeasonException">A run is at work.</exception>
    public static WorkersAway Hold(string datasetFolder)
    {
        var held = new WorkersAway(datasetFolder);
        var names = Path.Combine(datasetFolder, "worker", "names");
        if (!Directory.Exists(names)) return held;
        foreach (var path in Directory.EnumerateFiles(names, "*.lock"))
        {
            if (FileLock.TryTake(path) is { } taken)
            {
                held._locks.Add(taken);
                continue;
            }

            held.Dispose();
            throw new SeasonException($"'{Path.GetFileNameWithoutExtension(path)}' works on the dataset just now; what it is about to write could not be found. Stop it and try again");
        }

        return held;
    }

    /// <summary>The names given, and the empty files held here, which cannot be read meanwhile.</summary>
    public IReadOnlySet<string> PassedOver(IEnumerable<string> names) =>
        names.Concat(_locks.Select(l => Path.GetRelativePath(_folder, l.Name).Replace('\\', '/'))).ToHashSet(StringComparer.Ordinal);

    public void Dispose()
    {
        foreach (var held in _locks) held.Dispose();
    }
}
