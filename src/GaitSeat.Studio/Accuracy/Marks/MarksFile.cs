using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>Reads the table of marks: comma-separated, a header line, one row a point, picture and pass.</summary>
public static class MarksFile
{
    private const string Header = "picture,sha256,time_s,width_px,height_px,facing,view,rider_top_px,rider_bottom_px,pass,point,x_px,y_px,visibility";

    /// <summary>The pictures in the order of the file, each pass by itself.</summary>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="InvalidDataException">A row is wrong: says line, what was found and what is allowed.</exception>
    public static IReadOnlyList<MarkedPicture> Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (!File.Exists(path)) throw new FileNotFoundException($"No table of marks '{path}'.", path);
        var lines = File.ReadAllLines(path);
        if (lines.Length == 0 || lines[0] != Header) throw new InvalidDataException($"'{path}' is not a table of marks: its first line must be '{Header}'.");
        var rows = lines.Skip(1).Select((text, i) => new MarksRow(path, i + 2, text.Split(','))).ToList();
        return [.. rows.GroupBy(r => (r.Picture, r.TimeSeconds, r.Pass)).Select(g => Picture([.. g]))];
    }

    /// <summary>Each picture once: the mean of its markings.</summary>
    public static IReadOnlyList<MarkedPicture> Merged(IEnumerable<MarkedPicture> pictures)
    {
        ArgumentNullException.ThrowIfNull(pictures);
        return [.. pictures.GroupBy(p => p.Key).Select(g => g.Aggregate((a, b) => a.MeanWith(b)))];
    }

    private static MarkedPicture Picture(MarksRow[] rows)
    {
        var first = rows[0];
        var marks = new Dictionary<BodyPoint, Mark>();
        foreach (var row in rows)
        {
            if (!row.SamePictureAs(first)) throw row.Wrong($"does not say the same of '{first.Picture}' as line {first.Line}");
            if (!marks.TryAdd(row.Point, row.Mark)) throw row.Wrong($"marks the {row.Point.ToTerm()} a second time");
        }

        return marks.Count == MarkedPicture.Points.Count ? first.With(marks) : throw first.Wrong($"begins a picture with {marks.Count} points; {MarkedPicture.Points.Count} are needed, hidden ones too");
    }
}
