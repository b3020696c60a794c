using System.Text;

namespace GaitSeat.Store;

/// <summary>Writes new sheets and adds rows to old ones.</summary>
internal static class SheetWriter
{
    internal static void WriteTemplate(string path, IEnumerable<string> clipFiles)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(clipFiles);
        if (File.Exists(path)) throw new IOException($"'{path}' is there already and is not overwritten. Add missing clips to it, or move it away.");
        var text = new StringBuilder().AppendJoin(',', SheetColumns.Template).Append('\n');
        foreach (var clip in Sorted(clipFiles)) text.Append(Row(clip, column: 0, SheetColumns.Template.Count, ',')).Append('\n');
        // With a byte order mark: spreadsheet programs otherwise take UTF-8 for the system's old code page.
        using var writer = new StreamWriter(path, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write });
        writer.Write(text);
    }

    internal static int Update(string path, IEnumerable<string> clipFiles)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(clipFiles);
        var (text, problem) = SheetText.Read(path, "session sheet");
        if (problem is not null) throw new InvalidDataException(problem.ToString());
        if (SheetGrid.Cut(text!) is not { } grid || grid.ColumnOf(SheetColumns.ClipFile) < 0)
        {
            throw new InvalidDataException($"'{path}' has no column {SheetColumns.ClipFile}; rows cannot be added to it.");
        }

        var column = grid.ColumnOf(SheetColumns.ClipFile);
        var listed = grid.Lines.Select(l => l.Fields.ElementAtOrDefault(column)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var rows = Sorted(clipFiles).Where(c => !listed.Contains(c)).Select(c => Row(c, column, grid.Header.Fields.Count, grid.Delimiter)).ToList();
        if (rows.Count > 0) File.AppendAllText(path, Appended(text!, rows));
        return rows.Count;
    }

    private static string Appended(string text, List<string> rows)
    {
        var end = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var start = text.EndsWith('\n') ? "" : end;
        return start + string.Concat(rows.Select(r => r + end));
    }

    private static string Row(string clip, int column, int columns, char delimiter) =>
        new string(delimiter, column) + Quoted(clip, delimiter) + new string(delimiter, columns - 1 - column);

    internal static string Quoted(string field, char delimiter) =>
        field.AsSpan().ContainsAny([delimiter, '"', '\n', '\r']) || field != field.Trim()
            ? $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : field;

    private static IEnumerable<string> Sorted(IEnumerable<string> clipFiles) =>
        clipFiles.Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal);
}
