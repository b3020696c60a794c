using System.Globalization;
using System.Net;
using System.Text;

namespace GaitSeat.Faults.Cards;

/// <summary>A small plot of shares against shares, both 0..1, as SVG.</summary>
internal static class UnitPlot
{
    private const int SizePx = 260;
    private const int MarginPx = 44;

    /// <param name="diagonal">Whether the line of equality is drawn: perfect calibration, or no skill.</param>
    internal static string Svg(string xName, string yName, IReadOnlyList<(double X, double Y)> points, bool diagonal, bool marks)
    {
        var svg = new StringBuilder();
        var whole = SizePx + 2 * MarginPx;
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {whole} {whole}\" width=\"{whole}\" height=\"{whole}\" font-family=\"sans-serif\" font-size=\"12\">");
        svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{MarginPx}\" y=\"{MarginPx}\" width=\"{SizePx}\" height=\"{SizePx}\" fill=\"none\" stroke=\"#999\"/>");
        foreach (var tick in (double[])[0, 0.5, 1])
        {
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(tick):0.#}\" y=\"{MarginPx + SizePx + 16}\" text-anchor=\"middle\">{tick:0.#}</text>");
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{MarginPx - 6}\" y=\"{Y(tick) + 4:0.#}\" text-anchor=\"end\">{tick:0.#}</text>");
        }

        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{whole / 2}\" y=\"{whole - 8}\" text-anchor=\"middle\">{WebUtility.HtmlEncode(xName)}</text>");
        svg.Append(CultureInfo.InvariantCulture, $"<text transform=\"translate(12 {whole / 2}) rotate(-90)\" text-anchor=\"middle\">{WebUtility.HtmlEncode(yName)}</text>");
        if (diagonal) svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(0):0.#} {Y(0):0.#}L{X(1):0.#} {Y(1):0.#}\" stroke=\"#bbb\" stroke-dasharray=\"4 4\"/>");
        var line = string.Join('L', points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{X(p.X):0.##} {Y(p.Y):0.##}")));
        if (points.Count > 1) svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{line}\" fill=\"none\" stroke=\"#14507a\" stroke-width=\"2\"/>");
        if (marks || points.Count == 1) foreach (var p in points) svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{X(p.X):0.##}\" cy=\"{Y(p.Y):0.##}\" r=\"4\" fill=\"#14507a\"/>");
        return svg.Append("</svg>").ToString();
    }

    private static double X(double share) => MarginPx + SizePx * share;

    private static double Y(double share) => MarginPx + SizePx * (1 - share);
}
