using System.Text;

namespace GaitSeat.Pipeline.Watch.Night;

/// <summary>The summary as Markdown. File names come from strangers: whatever could be read as markup is made harmless.</summary>
public static class NightMarkdown
{
    /// <summary>What means something within a line. What means something only at its beginning (lists, rules) is left: no foreign text stands there.</summary>
    private const string Marks = @"\`*_{}[]()<>#!|~&@";

    public static string Write(NightSummary summary)
    {
        ArgumentNullException.ThrowIfNull(summary);
        var text = new StringBuilder();
        text.Append($"# {Plain(NightText.Title(summary))}\n\n{Plain(NightText.Lead(summary))}\n");
        foreach (var section in NightText.Sections(summary))
        {
            text.Append($"\n## {Plain(section.Title)}\n\n");
            if (section.Rows.Length == 0) text.Append(Plain(section.Nothing)).Append('\n');
            else WriteTable(text, section);
        }

        return text.ToString();
    }

    private static void WriteTable(StringBuilder text, Section section)
    {
        WriteRow(text, section.Heads);
        text.Append("|" + string.Concat(section.Heads.Select(_ => "---|"))).Append('\n');
        foreach (var row in section.Rows) WriteRow(text, row);
    }

    private static void WriteRow(StringBuilder text, string[] cells) => text.Append("| " + string.Join(" | ", cells.Select(Plain)) + " |").Append('\n');

    /// <summary>A backslash before every mark, and within what would be made a link for looking like an address.</summary>
    private static string Plain(string text)
    {
        var tame = NightText.Tame(text);
        var plain = new StringBuilder(tame.Length);
        for (var i = 0; i < tame.Length; i++)
        {
            if (Marks.Contains(tame[i], StringComparison.Ordinal) || IsInAddress(tame, i)) plain.Append('\\');
            plain.Append(tame[i]);
        }

        return plain.ToString();
    }

    private static bool IsInAddress(string text, int i) => text[i] switch
    {
        ':' => i + 1 < text.Length && text[i + 1] == '/',
        '.' => i >= 3 && text.AsSpan(i - 3, 3).Equals("www", StringComparison.OrdinalIgnoreCase),
        _ => false,
    };
}
