using System.Globalization;

namespace GaitSeat.Store;

/// <summary>Reads the fields of one line by column; what is wrong is added to the problems, and the field then counts as empty.</summary>
internal sealed class SheetRow
{
    private const string Iso = "yyyy-MM-dd";
    private readonly SheetGrid _grid;
    private readonly SheetLine _line;
    private readonly List<SheetProblem> _problems;

    internal SheetRow(SheetGrid grid, SheetLine line, List<SheetProblem> problems)
    {
        (_grid, _line, _problems) = (grid, line, problems);
        var columns = grid.Header.Fields.Count;
        if (line.Fields.Skip(columns).Any(f => f.Length > 0))
        {
            problems.Add(new(line.Line, null, $"{line.Fields.Count} fields found, the first line names {columns}. Put quotes around a field that holds '{grid.Delimiter}'."));
        }
    }

    internal void Problem(string column, string found, string allowed) =>
        _problems.Add(new(_line.Line, column, $"found '{found}'; {allowed}."));

    /// <returns>The field; null where it is empty or there is no such column.</returns>
    internal string? Text(string column) => Field(_grid.ColumnOf(column)) is { Length: > 0 } text ? text : null;

    /// <returns>The name; empty where it is missing or refused.</returns>
    internal string ClipFile(string column)
    {
        var name = Text(column);
        if (name is null)
        {
            Problem(column, "", "the file name of a clip is required");
            return "";
        }

        if (name.AsSpan().ContainsAny("/\\:\0") || name is "." or "..")
        {
            Problem(column, name, "a file name within the clip folder is allowed, without folders, drive letters or '..'");
            return "";
        }

        return name;
    }

    internal double? Number(string column)
    {
        if (Text(column) is not { } text) return null;
        var (least, most) = SheetColumns.Bounds[column];
        var plain = _grid.Delimiter == ';' ? text.Replace(',', '.') : text;
        var isNumber = double.TryParse(plain, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value);
        if (isNumber && value >= least && value <= most) return value;
        Problem(column, text, string.Create(CultureInfo.InvariantCulture, $"a number from {least} to {most} is allowed, or nothing"));
        return null;
    }

    internal DateOnly? Date(string column)
    {
        if (Text(column) is not { } text) return null;
        if (DateOnly.TryParseExact(text, Iso, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) return date;
        Problem(column, text, "a day written year-month-day such as 2026-05-31 is allowed, or nothing");
        return null;
    }

    /// <returns>One of the words in lower case; null where it is empty or refused.</returns>
    internal string? OneOf(string column, IReadOnlyList<string> words, bool required)
    {
        var text = Text(column);
        if (text is null && !required) return null;
        var word = words.FirstOrDefault(w => string.Equals(w, text, StringComparison.OrdinalIgnoreCase));
        if (word is null) Problem(column, text ?? "", string.Join(" or ", words) + (required ? " is required" : " is allowed, or nothing"));
        return word;
    }

    /// <summary>Filled fields of columns that are not known here, by column name.</summary>
    internal IReadOnlyDictionary<string, string> Extra()
    {
        var extra = new SortedDictionary<string, string>(StringComparer.Ordinal);
        for (var i = 0; i < _grid.Header.Fields.Count; i++)
        {
            var name = _grid.Header.Fields[i];
            if (name.Length > 0 && !SheetColumns.Known.Contains(name) && Field(i) is { Length: > 0 } text) extra[name] = text;
        }

        return extra;
    }

    private string? Field(int column) => column >= 0 && column < _line.Fields.Count ? _line.Fields[column] : null;
}
