using System.Globalization;
using System.Text.RegularExpressions;

namespace GaitSeat.Study.Definition;

/// <summary>A condition on one column, as written in a study file: <c>gait = rising_trot</c>, <c>quality &gt;= 0.5</c>, <c>rider in anna, berta</c>. A missing value never meets it.</summary>
public sealed partial record RowFilter(string Column, string Operator, IReadOnlyList<string> Values)
{
    private const string Allowed = "write: column operator value, with one of = != < <= > >= in";

    public string Text => $"{Column} {Operator} {string.Join(", ", Values)}";

    /// <exception cref="FormatException">Not of this form.</exception>
    public static RowFilter Parse(string text)
    {
        var match = Form().Match(text);
        if (!match.Success) throw new FormatException($"'{text}' is no condition; {Allowed}");
        var (column, sign, value) = (match.Groups[1].Value, match.Groups[2].Value, match.Groups[3].Value.Trim());
        string[] values = sign == "in" ? value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) : [value];
        if (values.Length == 0 || values[0].Length == 0) throw new FormatException($"'{text}' has no value; {Allowed}");
        if (sign[0] is '<' or '>' && !IsNumber(value)) throw new FormatException($"'{text}' compares with '{value}', which is no number");
        return new(column, sign, values);
    }

    /// <summary>Which rows meet it.</summary>
    /// <exception cref="ArgumentException">No such column, or a size asked of a column of texts.</exception>
    public bool[] Of(StudyTable table) => table.IsNumber(Column) && Values.All(IsNumber)
        ? Array.ConvertAll(table.Numbers(Column), Meets)
        : Operator[0] is '<' or '>' ? throw new ArgumentException($"'{Text}' asks for the size of '{Column}', a column of texts") : Array.ConvertAll(table.Labels(Column), Meets);

    private bool Meets(double found) => !double.IsNaN(found) && Operator switch
    {
        "<" => found < Number(0),
        "<=" => found <= Number(0),
        ">" => found > Number(0),
        ">=" => found >= Number(0),
        "!=" => found != Number(0),
        _ => Values.Select((_, i) => Number(i)).Contains(found),
    };

    private bool Meets(string? found) => found is not null && (Operator == "!=" ? found != Values[0] : Values.Contains(found));

    private double Number(int i) => double.Parse(Values[i], CultureInfo.InvariantCulture);

    private static bool IsNumber(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var v) && double.IsFinite(v);

    [GeneratedRegex(@"^\s*([a-z][a-z0-9_]*)\s*(<=|>=|!=|=|<|>|\bin\b)\s*(.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}
