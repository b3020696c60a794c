using System.Net;
using System.Text;

namespace GaitSeat.Pipeline.Watch.Night;

/// <summary>The summary as one HTML page without scripts or anything from elsewhere. Every text goes through the encoder.</summary>
public static class NightHtml
{
    private const string Style =
        """
        :root{color-scheme:light dark;--ink:#1d2733;--paper:#fbfaf7;--line:#d9d4c8;--quiet:#6b6558}
        @media(prefers-color-scheme:dark){:root{--ink:#e9e5da;--paper:#191c20;--line:#3a3f46;--quiet:#a39c8c}}
        body{margin:2rem auto;max-width:60rem;padding:0 1rem;color:var(--ink);background:var(--paper);font:1rem/1.5 Georgia,"Times New Roman",serif}
        h1{font-size:1.6rem;margin-bottom:.2rem}h2{font-size:1.15rem;margin-top:2rem;border-bottom:2px solid var(--line);padding-bottom:.2rem}
        table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;padding:.3rem .8rem .3rem 0;border-bottom:1px solid var(--line);overflow-wrap:anywhere}
        th{font-weight:normal;color:var(--quiet)}p.none{color:var(--quiet)}
        """;

    public static string Write(NightSummary summary)
    {
        ArgumentNullException.ThrowIfNull(summary);
        var text = new StringBuilder();
        text.Append("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">");
        text.Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">");
        text.Append($"<title>{Plain(NightText.Title(summary))}</title><style>{Style}</style></head>\n<body><h1>{Plain(NightText.Title(summary))}</h1>\n<p>{Plain(NightText.Lead(summary))}</p>\n");
        foreach (var section in NightText.Sections(summary))
        {
            text.Append($"<h2>{Plain(section.Title)}</h2>\n");
            if (section.Rows.Length == 0) text.Append($"<p class=\"none\">{Plain(section.Nothing)}</p>\n");
            else WriteTable(text, section);
        }

        return text.Append("</body></html>\n").ToString();
    }

    private static void WriteTable(StringBuilder text, Section section)
    {
        text.Append("<table>");
        if (section.Heads.Any(h => h.Length > 0)) text.Append("<tr>" + string.Concat(section.Heads.Select(h => $"<th scope=\"col\">{Plain(h)}</th>")) + "</tr>\n");
        foreach (var row in section.Rows) text.Append("<tr>" + string.Concat(row.Select(c => $"<td>{Plain(c)}</td>")) + "</tr>\n");
        text.Append("</table>\n");
    }

    private static string Plain(string text) => WebUtility.HtmlEncode(NightText.Tame(text));
}
