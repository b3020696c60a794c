using CsvHelper;

namespace GaitSeat.Store;

/// <summary>One line of a sheet, cut into fields.</summary>
/// <param name="Line">1-based line of the file on which it begins.</param>
internal sealed record SheetLine(int Line, IReadOnlyList<string> Fields);

/// <summary>A sheet cut into fields, without a meaning yet.</summary>
/// <param name="Header">Names in lower case, without space around them.</param>
internal sealed record SheetGrid(char Delimiter, SheetLine Header, IReadOnlyList<SheetLine> Lines, IReadOnlyList<SheetProblem> Problems)
{
    /// <returns>The grid; null where the text holds no line at all.</returns>
    internal static SheetGrid? Cut(string text)
    {
        var delimiter = DelimiterOf(text);
        var problems = new List<SheetProblem>();
        var lines = new List<SheetLine>();
        using var reader = CsvReader.FromText(text, Options(delimiter, problems));
        while (reader.Read())
        {
            string[] fields = [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)];
            if (fields.Any(f => f.Length > 0)) lines.Add(new((int)reader.LineNumber, fields));
        }

        return lines is [var header, .. var rest]
            ? new(delimiter, header with { Fields = [.. header.Fields.Select(f => f.ToLowerInvariant())] }, rest, problems)
            : null;
    }

    internal int ColumnOf(string name) => Header.Fields.ToList().IndexOf(name);

    /// <summary>The delimiter of the first line: the one of comma and semicolon that stands there more often.</summary>
    private static char DelimiterOf(string text)
    {
        var first = text.AsSpan().TrimStart("\r\n");
        var end = first.IndexOfAny('\r', '\n');
        if (end >= 0) first = first[..end];
        return first.Count(';') > first.Count(',') ? ';' : ',';
    }

    private static CsvReaderOptions Options(char delimiter, List<SheetProblem> problems) => new()
    {
        Separator = delimiter,
        HasHeader = false,
        TrimWhitespace = true,
        TrimInsideQuotes = true,
        TrackLineNumbers = true,
        OnMalformedRecord = bad => problems.Add(new((int)bad.LineNumber, null, $"found {Describe(bad.Reason)} in '{bad.RawRecord}'; put quotes around the whole field and double those inside it.")),
    };

    private static string Describe(CsvMalformedReason reason) => reason switch
    {
        CsvMalformedReason.UnterminatedQuote => "a quote that is never closed",
        CsvMalformedReason.TextAfterClosingQuote => "text after a closing quote",
        _ => "a stray quote",
    };
}
