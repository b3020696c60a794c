using System.Globalization;
using System.Net;
using System.Text;
using GaitSeat.Faults;

namespace GaitSeat.Pipeline.Pupil;

/// <summary>What stands on a pupil's page.</summary>
/// <param name="Rider">Pseudonym.</param>
/// <param name="Seen">What was seen in the week, sentences.</param>
/// <param name="ClipMp4">A short clip; null where none could be made, which <paramref name="WithoutPictures"/> explains.</param>
/// <param name="Stills">JPEGs with their captions.</param>
/// <param name="PlotSvg">Null where there is nothing to draw.</param>
internal sealed record PupilContent(
    string Rider, DateOnly From, DateOnly To, IReadOnlyList<string> Seen, byte[]? ClipMp4, string? WithoutPictures, IReadOnlyList<(string Caption, byte[] Jpeg)> Stills,
    IReadOnlyList<Progress> Progress, string? PlotSvg, FirstTask? Task);

/// <summary>The pupil's page: one HTML file with everything in it, no scripts, nothing asked for from elsewhere, fit for paper. Every text goes through the encoder.</summary>
internal static class PupilPage
{
    private const string Style =
        """
        :root{--ink:#1f2a33;--paper:#fffdf9;--line:#dcd6c8;--quiet:#5a656f;--leaf:#1f6b52}
        *{box-sizing:border-box}
        body{margin:0 auto;max-width:50rem;padding:1.5rem 1.2rem 3rem;color:var(--ink);background:var(--paper);font:1.05rem/1.55 "Inter","Segoe UI",system-ui,sans-serif}
        header{border-bottom:3px solid var(--leaf);margin-bottom:1.4rem;padding-bottom:.6rem}
        h1{font-size:1.9rem;line-height:1.2;margin:0}header p{margin:.2rem 0 0;color:var(--quiet)}
        h2{font-size:1.3rem;margin:2rem 0 .6rem;color:var(--leaf)}h3{font-size:1.05rem;margin:1.1rem 0 .2rem}
        p{margin:.5rem 0}ul{padding-left:1.2rem}
        .pictures{display:grid;grid-template-columns:1fr 1fr;gap:.8rem}.pictures .clip{grid-column:1/-1}
        figure{margin:0;break-inside:avoid}img,video{display:block;width:100%;height:auto;border-radius:6px;background:#e8e4da}figcaption{color:var(--quiet);font-size:.92rem;margin-top:.25rem}
        .first{margin-top:1.4rem;border:2px solid var(--leaf);border-radius:10px;padding:.2rem 1.2rem 1rem;break-inside:avoid}.first h2{margin-top:1rem}
        .plot svg{width:100%;height:auto}
        .cautions{border-top:1px solid var(--line);margin-top:2rem;padding-top:.4rem;color:var(--quiet);font-size:.95rem}.cautions h2{font-size:1.05rem;color:var(--ink);margin-top:.6rem}
        @media(max-width:34rem){.pictures{grid-template-columns:1fr}}
        @media print{@page{size:A4;margin:14mm}body{max-width:none;padding:0;font-size:10.5pt;background:#fff}h2{break-after:avoid}.clip{display:none}}
        """;

    public static string Write(PupilContent page)
    {
        ArgumentNullException.ThrowIfNull(page);
        var text = new StringBuilder("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><meta name=\"referrer\" content=\"no-referrer\">");
        text.Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:; media-src data:\">");
        text.Append($"<title>{Plain($"Your week in the saddle: {page.Rider}")}</title><style>{Style}</style></head>\n<body>\n");
        text.Append($"<header><h1>Your week in the saddle</h1><p>{Plain($"{page.Rider}, {Week(page.From, page.To)}")}</p></header>\n<main>\n");
        text.Append("<section><h2>What was seen</h2>\n").Append(string.Concat(page.Seen.Select(s => $"<p>{Plain(s)}</p>\n"))).Append(Pictures(page)).Append("</section>\n");
        text.Append(First(page.Task));
        text.Append(Progress(page));
        text.Append($"<section class=\"cautions\"><h2>Before you ride</h2><ul>{string.Concat(Cautions.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => $"<li>{Plain(l.Trim())}</li>"))}</ul></section>\n");
        return text.Append("</main></body></html>\n").ToString();
    }

    private static string Pictures(PupilContent page)
    {
        if (page.WithoutPictures is { } why) return $"<p>{Plain(why)}</p>\n";
        var text = new StringBuilder("<div class=\"pictures\">\n");
        foreach (var (caption, jpeg) in page.Stills) text.Append($"<figure><img alt=\"{Plain(caption)}\" src=\"data:image/jpeg;base64,{Convert.ToBase64String(jpeg)}\"><figcaption>{Plain(caption)}</figcaption></figure>\n");
        if (page.ClipMp4 is { } clip) text.Append($"<figure class=\"clip\"><video controls muted loop playsinline preload=\"metadata\" src=\"data:video/mp4;base64,{Convert.ToBase64String(clip)}\"></video><figcaption>A few strides of it. Heads are blurred on purpose.</figcaption></figure>\n");
        return text.Append("</div>\n").ToString();
    }

    private static string First(FirstTask? task)
    {
        if (task is null) return "<section class=\"first\"><h2>To work on</h2><p>Nothing stands out this week. Keep doing what you do, and ask your coach what to look at next.</p></section>\n";
        var text = new StringBuilder($"<section class=\"first\"><h2>To work on first</h2>\n<h3>{Plain(task.Card.Title)}</h3><p>{Plain(task.Why)}</p>\n");
        text.Append($"<p>{Plain(task.Agreed ? "Your coach has looked at this and agrees." : "The tool noticed this; your coach has not looked at it yet. Ask before you change anything.")}</p>\n");
        foreach (var (heading, body) in task.Card.Sections) text.Append($"<h3>{Plain(heading)}</h3><p>{Plain(body)}</p>\n");
        return text.Append("</section>\n").ToString();
    }

    private static string Progress(PupilContent page)
    {
        if (page.Progress.Count == 0) return "";
        var text = new StringBuilder("<section><h2>How it goes</h2>\n");
        foreach (var p in page.Progress) text.Append($"<h3>{Plain(p.Title)}</h3><p>{Plain(p.Sentences)}</p>\n");
        if (page.PlotSvg is { } svg) text.Append($"<figure class=\"plot\"><img alt=\"{Plain(page.Progress[0].Title)} by day\" src=\"data:image/svg+xml;base64,{Convert.ToBase64String(Encoding.UTF8.GetBytes(svg))}\"><figcaption>{Plain($"{page.Progress[0].Title}, {page.Progress[0].Unit}, by day. The bars say how sure each is: 95 %.")}</figcaption></figure>\n");
        return text.Append("</section>\n").ToString();
    }

    private static string Week(DateOnly from, DateOnly to) => from == to ? ProgressWords.Day(to) : string.Create(CultureInfo.InvariantCulture, $"{from:d MMMM} to {to:d MMMM yyyy}");

    private static string Plain(string text) => WebUtility.HtmlEncode(text);
}
