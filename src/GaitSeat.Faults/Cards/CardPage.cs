using System.Net;
using System.Text;

namespace GaitSeat.Faults.Cards;

/// <summary>A part of a card; the same parts make the Markdown and the HTML.</summary>
internal abstract record CardPart;

internal sealed record CardHeading(int Level, string Text) : CardPart;

internal sealed record CardText(string Text) : CardPart;

internal sealed record CardTable(IReadOnlyList<string> Header, IReadOnlyList<IReadOnlyList<string>> Rows) : CardPart;

/// <param name="File">Name of the SVG beside the card; the HTML holds it in itself.</param>
internal sealed record CardPicture(string File, string Caption, string Svg) : CardPart;

/// <param name="Path">From the card's folder.</param>
internal sealed record CardImage(string Path, string Caption) : CardPart;

/// <summary>Writes the parts of a card.</summary>
internal static class CardPage
{
    private const string Style = "body{font:16px/1.5 system-ui,sans-serif;max-width:60rem;margin:2rem auto;padding:0 1rem;color:#222}table{border-collapse:collapse;margin:1rem 0}td,th{border-bottom:1px solid #ccc;padding:.25rem .75rem;text-align:left}figure{display:inline-block;margin:0 1rem 1rem 0}";

    internal static string ToMarkdown(IEnumerable<CardPart> parts) => string.Concat(parts.Select(Markdown));

    internal static string ToHtml(string title, IEnumerable<CardPart> parts) =>
        $"<!DOCTYPE html>\n<html lang=\"en\">\n<head><meta charset=\"utf-8\"><title>{WebUtility.HtmlEncode(title)}</title><style>{Style}</style></head>\n<body>\n{string.Concat(parts.Select(Html))}</body>\n</html>\n";

    private static string Markdown(CardPart part) => part switch
    {
        CardHeading h => $"{new string('#', h.Level)} {h.Text}\n\n",
        CardText t => t.Text + "\n\n",
        CardPicture p => $"![{p.Caption}]({p.File})\n\n",
        CardImage i => $"![{i.Caption}](<{i.Path}>)\n\n",
        CardTable t => Line(t.Header) + Line([.. t.Header.Select(_ => "---")]) + string.Concat(t.Rows.Select(Line)) + "\n",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "No such part."),
    };

    private static string Line(IReadOnlyList<string> cells) => "| " + string.Join(" | ", cells.Select(c => c.Replace("|", "\\|", StringComparison.Ordinal))) + " |\n";

    private static string Html(CardPart part) => part switch
    {
        CardHeading h => $"<h{h.Level}>{WebUtility.HtmlEncode(h.Text)}</h{h.Level}>\n",
        CardText t => $"<p>{WebUtility.HtmlEncode(t.Text)}</p>\n",
        CardPicture p => $"<figure>{p.Svg}<figcaption>{WebUtility.HtmlEncode(p.Caption)}</figcaption></figure>\n",
        CardImage i => $"<figure><img src=\"{WebUtility.HtmlEncode(i.Path)}\" alt=\"\" width=\"480\"><figcaption>{WebUtility.HtmlEncode(i.Caption)}</figcaption></figure>\n",
        CardTable t => HtmlTable(t),
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "No such part."),
    };

    private static string HtmlTable(CardTable table)
    {
        var html = new StringBuilder("<table><thead><tr>");
        html.AppendJoin("", table.Header.Select(c => $"<th>{WebUtility.HtmlEncode(c)}</th>")).Append("</tr></thead><tbody>\n");
        foreach (var row in table.Rows) html.Append("<tr>").AppendJoin("", row.Select(c => $"<td>{WebUtility.HtmlEncode(c)}</td>")).Append("</tr>\n");
        return html.Append("</tbody></table>\n").ToString();
    }
}
