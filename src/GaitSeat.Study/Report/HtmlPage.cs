using System.Net;
using System.Text;

namespace GaitSeat.Study.Report;

/// <summary>A report as one HTML page: pictures within it, no scripts, nothing asked for from elsewhere, fit for paper. Every text goes through the encoder.</summary>
public static class HtmlPage
{
    private const string Style =
        """
        :root{--ink:#1d2733;--paper:#fff;--line:#d9d4c8;--quiet:#5f6a75;--warn:#8a3d00}
        body{margin:2rem auto;max-width:56rem;padding:0 1rem;color:var(--ink);background:var(--paper);font:1rem/1.55 Georgia,"Times New Roman",serif}
        h1{font-size:1.7rem;margin-bottom:.3rem}h2{font-size:1.3rem;margin-top:2.4rem;border-bottom:2px solid var(--line);padding-bottom:.2rem}h3{font-size:1.05rem;margin-top:1.6rem}
        table{border-collapse:collapse;width:100%;margin:1rem 0;font-size:.92rem;font-variant-numeric:tabular-nums}
        th,td{text-align:right;vertical-align:top;padding:.28rem 0 .28rem .9rem;border-bottom:1px solid var(--line);overflow-wrap:break-word}
        table.figures td:not(:first-child){white-space:nowrap}
        th:first-child,td:first-child{text-align:left;padding-left:0}td:nth-child(2){overflow-wrap:anywhere}th{font-weight:normal;color:var(--quiet)}
        figure{margin:1.2rem 0;break-inside:avoid}figure img{width:100%;height:auto}figcaption{color:var(--quiet);font-size:.9rem}
        p.warning{border-left:4px solid var(--warn);padding:.3rem 0 .3rem .8rem;color:var(--warn)}
        pre{background:#f4f2ec;padding:.7rem .9rem;overflow-x:auto;font-size:.85rem;white-space:pre-wrap;overflow-wrap:anywhere}
        @media print{body{margin:0;max-width:none;font-size:10pt}h2,h3{break-after:avoid}tr,pre,p.warning{break-inside:avoid}thead{display:table-header-group}@page{margin:18mm}}
        """;

    /// <param name="folder">Where the pictures lie.</param>
    public static string Write(ReportPage page, string folder)
    {
        ArgumentNullException.ThrowIfNull(page);
        var text = new StringBuilder("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">");
        text.Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">");
        text.Append($"<title>{Plain(page.Title)}</title><style>{Style}</style></head>\n<body>\n<h1>{Plain(page.Title)}</h1>\n");
        foreach (var block in page.Blocks) text.Append(Of(block, folder)).Append('\n');
        return text.Append("</body></html>\n").ToString();
    }

    private static string Of(ReportBlock block, string folder) => block switch
    {
        Heading h => $"<h{h.Level}>{Plain(h.Text)}</h{h.Level}>",
        Paragraph p => $"<p>{Plain(p.Text)}</p>",
        Warning w => $"<p class=\"warning\">{Plain(w.Text)}</p>",
        BulletList b => $"<ul>{string.Concat(b.Items.Select(i => $"<li>{Plain(i)}</li>"))}</ul>",
        FigureTable t => Table(t),
        Picture p => $"<figure><img alt=\"{Plain(p.Caption)}\" src=\"data:image/png;base64,{Convert.ToBase64String(File.ReadAllBytes(Path.Combine(folder, p.File)))}\"><figcaption>{Plain(p.Caption)}</figcaption></figure>",
        CodeBlock c => $"<pre>{Plain(c.Text.TrimEnd())}</pre>",
        _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType(), "a block that can be written"),
    };

    /// <summary>Tables of so many columns may hold sentences, which have to break; wider ones hold figures, which must not.</summary>
    private const int MostInSentences = 3;

    private static string Table(FigureTable table) =>
        $"<table{(table.Heads.Count > MostInSentences ? " class=\"figures\"" : "")}><thead><tr>{string.Concat(table.Heads.Select(h => $"<th scope=\"col\">{Plain(h)}</th>"))}</tr></thead><tbody>\n"
        + string.Concat(table.Rows.Select(r => $"<tr>{string.Concat(r.Select(c => $"<td>{Plain(c)}</td>"))}</tr>\n")) + "</tbody></table>";

    private static string Plain(string text) => WebUtility.HtmlEncode(text);
}
