using System.Globalization;
using System.Text;

namespace GaitSeat.Studio.Accuracy;

/// <summary>A table of Markdown, row by row.</summary>
internal sealed class MarkdownTable
{
    private readonly StringBuilder _text = new();
    private readonly int _columns;

    public MarkdownTable(params string[] head)
    {
        _columns = head.Length;
        Row(head);
        _text.Append('|').Insert(_text.Length, "---|", _columns).Append('\n');
    }

    public void Row(params string[] cells)
    {
        if (cells.Length != _columns) throw new ArgumentException($"The row has {cells.Length} cells; the table has {_columns} columns.", nameof(cells));
        _text.Append("| ").AppendJoin(" | ", cells).Append(" |\n");
    }

    public override string ToString() => _text.ToString();

    /// <summary>A number in a cell; a dash where it is not known.</summary>
    public static string Number(double value, string format) => double.IsFinite(value) ? value.ToString(format, CultureInfo.InvariantCulture) : "–";

    /// <summary>A number with its sign.</summary>
    public static string Signed(double value, string format) => Number(value, $"+{format};-{format};{format}");

    public static string Count(int value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Share(double part, double whole) => whole > 0 ? Number(100 * part / whole, "0.0") + " %" : "–";
}
