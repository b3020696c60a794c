using System.Text;

namespace GaitSeat.Study.Report;

/// <summary>A report as Markdown; pictures lie beside it.</summary>
public static class MarkdownPage
{
    public static string Write(ReportPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        var text = new StringBuilder($"# {Plain(page.Title)}\n");
        foreach (var block in page.Blocks) text.Append('\n').Append(Of(block)).Append('\n');
        return text.ToString();
    }

    private static string Of(ReportBlock block) => block switch
    {
        Heading h => $"{new string('#', h.Level)} {Plain(h.Text)}",
        Paragraph p => Plain(p.Text),
        Warning w => $"> **{Plain(w.Text)}**",
        BulletList b => string.Join('\n', b.Items.Select(i => $"- {Plain(i)}")),
        FigureTable t => Table(t),
        Picture p => $"![{Plain(p.Caption)}]({p.File})\n\n*{Plain(p.Caption)}*",
        CodeBlock c => $"```\n{c.Text.TrimEnd()}\n```",
        _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType(), "a block that can be written"),
    };

    private static string Table(FigureTable table) => string.Join('\n',
        [Row(table.Heads), "|" + string.Concat(table.Heads.Select((_, i) => i == 0 ? "---|" : "--:|")), .. table.Rows.Select(Row)]);

    private static string Row(IReadOnlyList<string> cells) => "| " + string.Join(" | ", cells.Select(c => Plain(c).Replace("|", "\\|", StringComparison.Ordinal))) + " |";

    /// <summary>Names of riders and columns may hold what Markdown reads as markup; a line break would end a table.</summary>
    private static string Plain(string text) => text.ReplaceLineEndings(" ")
        .Replace("\\", "\\\\", StringComparison.Ordinal).Replace("*", "\\*", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal)
        .Replace("`", "\\`", StringComparison.Ordinal).Replace("[", "\\[", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal);
}
