using System.Globalization;
using System.Text;

namespace GaitSeat.Study.Report;

/// <summary>One number of a study, in full.</summary>
/// <param name="Question">1 for the first.</param>
/// <param name="Quantity">What it is, such as <c>effect.low</c>.</param>
public readonly record struct NumberLine(int Question, string Outcome, string Quantity, double Value);

/// <summary>Every number of a study as CSV, to be read by machines and compared byte by byte: the same data and the same study file give the same file.</summary>
public static class NumbersFile
{
    public const string FileName = "numbers.csv";

    public static string Write(IReadOnlyList<NumberLine> lines)
    {
        var text = new StringBuilder("question,outcome,quantity,value\n");
        foreach (var line in lines)
            text.Append(CultureInfo.InvariantCulture, $"{line.Question},{Quoted(line.Outcome)},{Quoted(line.Quantity)},{(double.IsFinite(line.Value) ? line.Value.ToString("R", CultureInfo.InvariantCulture) : "")}\n");
        return text.ToString();
    }

    private static string Quoted(string text) => text.AsSpan().ContainsAny(",\"\r\n") ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}
