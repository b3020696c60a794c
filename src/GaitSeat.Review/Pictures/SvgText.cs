using System.Globalization;
using System.Security;
using System.Text;

namespace GaitSeat.Review.Pictures;

/// <summary>Writes SVG elements: numbers in the invariant culture, text escaped. Looks come from the style sheet by class, since the page allows no style of its own.</summary>
internal sealed class SvgText
{
    private readonly StringBuilder _text = new();

    internal SvgText Add(FormattableString element)
    {
        _text.Append(element.ToString(CultureInfo.InvariantCulture));
        return this;
    }

    internal SvgText Line(string look, double x1, double y1, double x2, double y2) => Add($"<line class=\"{look}\" x1=\"{x1:0.#}\" y1=\"{y1:0.#}\" x2=\"{x2:0.#}\" y2=\"{y2:0.#}\"/>");

    internal SvgText Dot(string look, double x, double y, double radius) => Add($"<circle class=\"{look}\" cx=\"{x:0.#}\" cy=\"{y:0.#}\" r=\"{radius:0.#}\"/>");

    internal SvgText Box(string look, double x, double y, double width, double height) => Add($"<rect class=\"{look}\" x=\"{x:0.#}\" y=\"{y:0.#}\" width=\"{Math.Max(0, width):0.#}\" height=\"{Math.Max(0, height):0.#}\"/>");

    internal SvgText Words(string look, double x, double y, string words, string anchor = "start") => Add($"<text class=\"{look}\" x=\"{x:0.#}\" y=\"{y:0.#}\" text-anchor=\"{anchor}\">{Escaped(words)}</text>");

    /// <summary>A line through points; points that are not finite break it.</summary>
    internal SvgText Path(string look, IEnumerable<(double X, double Y)> points)
    {
        var path = new StringBuilder();
        var draws = false;
        foreach (var (x, y) in points)
        {
            var seen = double.IsFinite(x) && double.IsFinite(y);
            if (seen) path.Append(string.Create(CultureInfo.InvariantCulture, $"{(draws ? 'L' : 'M')}{x:0.#} {y:0.#}"));
            draws = seen;
        }

        return Add($"<path class=\"{look}\" d=\"{path}\"/>");
    }

    internal static string Escaped(string text) => SecurityElement.Escape(text) ?? "";

    public override string ToString() => _text.ToString();
}
