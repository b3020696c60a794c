using System.Globalization;
using GaitSeat.Store;

namespace GaitSeat.Cli.Asking;

/// <summary>An answer as columns of text: numbers to the right, to four decimals; a null says so.</summary>
internal static class AnswerTable
{
    private const string Null = "null";

    public static IEnumerable<string> Lines(Answer answer)
    {
        var cells = answer.Rows.Select(r => r.Select(Text).ToArray()).ToList();
        var right = answer.Columns.Select((_, i) => answer.Rows.All(r => r[i] is null or not (string or DateOnly or DateTime or bool))).ToArray();
        var widths = answer.Columns.Select((name, i) => cells.Select(r => r[i].Length).Append(name.Length).Max()).ToArray();
        string Line(IReadOnlyList<string> texts) => string.Join("  ", texts.Select((t, i) => right[i] ? t.PadLeft(widths[i]) : t.PadRight(widths[i]))).TrimEnd();
        yield return Line(answer.Columns);
        yield return string.Join("  ", widths.Select(w => new string('-', w)));
        foreach (var row in cells) yield return Line(row);
        yield return answer.More ? $"(the first {cells.Count} rows; --rows shows more, --as csv all)" : $"({cells.Count} {(cells.Count == 1 ? "row" : "rows")})";
    }

    private static string Text(object? value) => value switch
    {
        null => Null,
        double d => d.ToString("0.####", CultureInfo.InvariantCulture),
        decimal d => d.ToString("0.####", CultureInfo.InvariantCulture),
        float f => f.ToString("0.####", CultureInfo.InvariantCulture),
        DateOnly d => d.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        bool b => b ? "true" : "false",
        string s => s.ReplaceLineEndings(" "),
        IFormattable f => f.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? Null,
    };
}
