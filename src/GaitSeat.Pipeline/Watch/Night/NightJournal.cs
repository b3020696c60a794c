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
    public IReadOnlyList<NightEntry> Read(DateOnly night) => Read(desk.Folder, night);

    /// <inheritdoc cref="Read(DateOnly)"/>
    /// <param name="workerFolder">The dataset's <c>worker</c> folder; for who only reads.</param>
    public static IReadOnlyList<NightEntry> Read(string workerFolder, DateOnly night) => [.. JsonLines.ReadAll<NightEntry>(FolderOf(workerFolder), $"*-{Text(night)}.jsonl").OrderBy(e => e.At)];

    /// <summary>The nights that have a line, the latest first.</summary>
    public static IReadOnlyList<DateOnly> Nights(string workerFolder)
    {
        if (!Directory.Exists(FolderOf(workerFolder))) return [];
        const int dayLength = 10;
        return
        [
            .. Directory.EnumerateFiles(FolderOf(workerFolder), "*.jsonl").Select(f => Path.GetFileNameWithoutExtension(f)).Where(n => n.Length > dayLength)
                .Select(n => DateOnly.TryParseExact(n[^dayLength..], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var night) ? night : (DateOnly?)null)
                .OfType<DateOnly>().Distinct().OrderDescending(),
        ];
    }

    private static string FolderOf(string workerFolder) => Path.Combine(workerFolder, "journal");

    private static string Text(DateOnly night) => night.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
