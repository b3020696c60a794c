using System.Globalization;

namespace GaitSeat.Store;

/// <summary>
/// The marks of a dataset, only ever added to. A clip's marks go with the clip when it is erased.
/// </summary>
public sealed class MarkStore
{
    private readonly Dataset _dataset;

    public MarkStore(Dataset dataset)
    {
        ArgumentNullException.ThrowIfNull(dataset);
        _dataset = dataset;
    }

    /// <summary>All marks, by time of marking.</summary>
    /// <exception cref="DatasetException">A file is damaged.</exception>
    public IReadOnlyList<HandMark> All()
    {
        using var query = new DatasetQuery(_dataset.Folder);
        return [.. query.Query("SELECT * FROM marks ORDER BY marked_at, clip_key, time_s, judge, point").Select(ToMark)];
    }

    /// <summary>Adds the marks of one clip, on the disk when this returns; times are kept to the millisecond.</summary>
    /// <exception cref="ArgumentException">There is none, they are of several clips, or one names no judge.</exception>
    /// <exception cref="DatasetException">The file could not be written.</exception>
    public async Task AppendAsync(IReadOnlyList<HandMark> marks, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(marks);
        if (marks.Select(m => m.ClipKey).Distinct(StringComparer.Ordinal).Count() != 1) throw new ArgumentException("Marks of one clip are added at a time, at least one.", nameof(marks));
        if (marks.Any(m => string.IsNullOrWhiteSpace(m.Judge))) throw new ArgumentException($"A mark on clip '{marks[0].ClipFile}' names no judge; give a pseudonym.", nameof(marks));
        await AddedRows.WriteAsync(_dataset, MarksTable.Table, marks[0].ClipKey, marks[0].ClipFile, marks, cancellationToken);
    }

    private static HandMark ToMark(IReadOnlyDictionary<string, object?> row)
    {
        double Real(string column) => (double?)row[column] ?? double.NaN;
        return new(
            (string)row["clip_key"]!, (string)row["clip_file"]!, Real("time_s"), (int)row["width_px"]!, (int)row["height_px"]!,
            VerdictWords.Of<HandPoint>((string)row["point"]!) ?? throw new DatasetException($"A mark on clip '{row["clip_file"]}' has point '{row["point"]}', which this version does not know. Read the dataset with the version that wrote it, or a later one."),
            Real("x_px"), Real("y_px"), (string)row["began"]! == "tool", (string)row["judge"]!,
            DateTimeOffset.ParseExact((string)row["marked_at"]!, MarksTable.TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal),
            Real("tool_x_px"), Real("tool_y_px"), (string)row["pipeline_hash"]!, (string)row["model_hash"]!);
    }
}
