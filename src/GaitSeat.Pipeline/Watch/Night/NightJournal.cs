using System.Globalization;

namespace GaitSeat.Pipeline.Watch.Night;

/// <summary>What became of each clip in a night, one file a night and worker in the dataset, so that a worker that was killed loses no line, and the summary covers all workers.</summary>
public sealed class NightJournal(WorkerDesk desk)
{
    private readonly Lock _guard = new();

    public void Add(DateOnly night, NightEntry entry)
    {
        lock (_guard) JsonLines.Append(desk.FileOf("journal", $"-{Text(night)}.jsonl"), entry);
    }

    /// <summary>The lines of all workers, in the order of time.</summary>
    public IReadOnlyList<NightEntry> Read(DateOnly night) =>
        [.. JsonLines.ReadAll<NightEntry>(Path.Combine(desk.Folder, "journal"), $"*-{Text(night)}.jsonl").OrderBy(e => e.At)];

    private static string Text(DateOnly night) => night.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
