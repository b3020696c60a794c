using System.Data.Common;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// The verdicts of a dataset, only ever added to; the same verdicts given twice stand once. A clip's verdicts go with the clip when it is erased.
/// </summary>
public sealed class VerdictStore
{
    private static readonly string[] Columns =
        ["clip_key", "clip_file", "spell", "fault", "verdict", "judge", "judged_at", "note", "drawn", "told", "told_probability", "pipeline_hash", "model_hash", "classifier_hash"];

    private const string Order = "ORDER BY judged_at, clip_key, spell, fault, judge, verdict";

    private readonly Dataset _dataset;

    public VerdictStore(Dataset dataset)
    {
        ArgumentNullException.ThrowIfNull(dataset);
        _dataset = dataset;
    }

    /// <summary>All verdicts, by time.</summary>
    /// <exception cref="DatasetException">A file is damaged.</exception>
    public IReadOnlyList<Verdict> All()
    {
        using var query = new DatasetQuery(_dataset.Folder);
        return [.. query.Query($"SELECT {string.Join(", ", Columns)} FROM verdicts {Order}").Select(ToVerdict)];
    }

    /// <summary>Adds verdicts; times are kept to the second.</summary>
    /// <returns>How many were new: those that stand there already, word for word, are not written again.</returns>
    /// <exception cref="ArgumentException">A verdict lacks its judge or has no clip key.</exception>
    /// <exception cref="DatasetException">A file could not be written.</exception>
    public async Task<int> AppendAsync(IReadOnlyList<Verdict> verdicts, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        if (verdicts.FirstOrDefault(v => string.IsNullOrWhiteSpace(v.Judge)) is { } nobody)
            throw new ArgumentException($"A verdict on clip '{nobody.ClipFile}' names no judge; give a pseudonym.", nameof(verdicts));
        var there = OfClips([.. verdicts.Select(v => v.ClipKey)]).ToHashSet();
        var fresh = verdicts.Select(ToTheSecond).Where(v => there.Add(v)).ToList();
        foreach (var clip in fresh.GroupBy(v => v.ClipKey, StringComparer.Ordinal)) await AddedRows.WriteAsync(_dataset, VerdictsTable.Table, clip.Key, clip.First().ClipFile, [.. clip], cancellationToken);
        return fresh.Count;
    }

    /// <summary>Only the files of these clips are read: a season judged through the page has thousands, and each answer is added by itself.</summary>
    private List<Verdict> OfClips(HashSet<string> clipKeys)
    {
        var parts = clipKeys.Select(RunName.ClipPart).ToHashSet(StringComparer.Ordinal);
        var partLength = parts.Select(p => p.Length).FirstOrDefault();
        string[] paths = [.. _dataset.FilesOf(VerdictsTable.Name).Where(f => Path.GetFileName(f) is var name && name.Length > partLength && parts.Contains(name[..partLength]))];
        var verdicts = new List<Verdict>();
        if (paths.Length > 0) FileQuery.Each(VerdictsTable.Table.Info, paths, Columns, "true " + Order, r => verdicts.Add(ToVerdict(Row(r))));
        return verdicts;
    }

    private static Dictionary<string, object?> Row(DbDataReader reader) =>
        Columns.Select((c, i) => (c, Value: reader.IsDBNull(i) ? null : reader.GetValue(i))).ToDictionary(c => c.c, c => c.Value, StringComparer.Ordinal);

    private static Verdict ToTheSecond(Verdict v) =>
        v with { JudgedAt = new DateTimeOffset(v.JudgedAt.UtcTicks / TimeSpan.TicksPerSecond * TimeSpan.TicksPerSecond, TimeSpan.Zero) };

    private static Verdict ToVerdict(IReadOnlyDictionary<string, object?> row) => new(
        (string)row["clip_key"]!,
        (string)row["clip_file"]!,
        (int)row["spell"]!,
        VerdictWords.Of<Fault>((string)row["fault"]!) ?? throw Unknown("fault", row),
        VerdictWords.Of<VerdictAnswer>((string)row["verdict"]!) ?? throw Unknown("verdict", row),
        (string)row["judge"]!,
        VerdictWords.Time((string)row["judged_at"]!) ?? throw Unknown("judged_at", row),
        (string?)row["note"],
        VerdictWords.Of<Drawn>((string)row["drawn"]!) ?? throw Unknown("drawn", row),
        (string?)row["told"] is { } told ? told == VerdictsTable.Flagged : null,
        (double?)row["told_probability"],
        (string)row["pipeline_hash"]!,
        (string)row["model_hash"]!,
        (string?)row["classifier_hash"]);

    private static DatasetException Unknown(string column, IReadOnlyDictionary<string, object?> row) =>
        new($"A verdict on clip '{row["clip_file"]}' has {column} '{row[column]}', which this version does not know. Read the dataset with the version that wrote it, or a later one.");
}
