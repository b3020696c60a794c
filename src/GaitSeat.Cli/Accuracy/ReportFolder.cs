using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Cli.Accuracy;

/// <summary>Writes what an accuracy run came to: pages, every error, plots.</summary>
public static class ReportFolder
{
    public static async Task WriteAsync(string folder, string page, IReadOnlyList<ClipErrors> clips, CancellationToken ct)
    {
        Directory.CreateDirectory(folder);
        await File.WriteAllTextAsync(Path.Combine(folder, "accuracy.md"), page, ct);
        await File.WriteAllTextAsync(Path.Combine(folder, "by-condition.md"), new ConditionTable(clips).EveryMeasure(), ct);
        await ErrorsTable.WriteAsync(clips, Path.Combine(folder, ErrorsTable.FileName), ct);
        new AccuracyPlots(clips, folder).Save();
    }
}
