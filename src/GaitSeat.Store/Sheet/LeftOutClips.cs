using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>The clips of a run whose rider's consent does not reach a use, and why.</summary>
/// <param name="ClipKeys">They are left out.</param>
/// <param name="Why">How many clips of how many riders, by reason.</param>
public sealed record LeftOutClips(IReadOnlySet<string> ClipKeys, IReadOnlyList<(string Reason, int Clips, int Riders)> Why)
{
    public static LeftOutClips None { get; } = new(new HashSet<string>(), []);

    /// <summary>For people, a line a reason.</summary>
    public IReadOnlyList<string> Lines => [.. Why.Select(w => string.Create(CultureInfo.InvariantCulture, $"left out: {w.Clips} clip{S(w.Clips)} of {w.Riders} rider{S(w.Riders)}, {w.Reason.Replace('_', ' ')}"))];

    /// <summary>The end of a condition that leaves them out; empty for none.</summary>
    public string SqlAndNot => ClipKeys.Count == 0 ? "" : $" AND clip_key NOT IN ({string.Join(", ", ClipKeys.Order(StringComparer.Ordinal).Select(SqlText.Literal))})";

    /// <param name="sheet">The row of a clip in the sheet as it is today; null for the clips it does not have. Of these the dataset's own record tells.</param>
    /// <param name="today">By the wall clock of the machine: consents end.</param>
    /// <exception cref="DatasetException">The dataset or its record cannot be read.</exception>
    public static LeftOutClips Of(DatasetQuery query, DatasetRun run, string datasetFolder, ConsentUse use, Func<string, Session?> sheet, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(query);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(sheet);
        var record = ConsentRecord.Read(datasetFolder);
        var gaps = query.Query($"SELECT clip_key, clip_file, rider FROM clips WHERE {run.Where}")
            .Select(r => (Key: (string)r["clip_key"]!, Rider: (string?)r["rider"], Row: sheet((string)r["clip_file"]!)))
            .Select(c => (c.Key, c.Rider, Gap: c.Row is { } row ? row.Against(use) : record.Of(c.Rider, today)?.Against(use, c.Rider)))
            .Where(c => c.Gap is not null).ToArray();
        return new(
            gaps.Select(g => g.Key).ToHashSet(StringComparer.Ordinal),
            [.. gaps.GroupBy(g => g.Gap!.Reason).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => (g.Key, g.Count(), g.Select(x => x.Rider).Distinct(StringComparer.Ordinal).Count()))]);
    }

    private static string S(int count) => count == 1 ? "" : "s";
}
