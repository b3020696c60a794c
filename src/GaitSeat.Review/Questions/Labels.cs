using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>The trade's words as they stand on the screen.</summary>
internal static class Labels
{
    /// <summary>Endings that say the unit, longest first; the unit is shown beside the number.</summary>
    private static readonly string[] UnitEndings = ["_pct_leg", "_cm_s", "_deg", "_pct", "_cm", "_s"];

    internal static string Of(Fault fault) => Sentence(fault.ToTerm());

    internal static string Of(MeasureDefinition measure)
    {
        var ending = UnitEndings.FirstOrDefault(e => measure.Column.EndsWith(e, StringComparison.Ordinal)) ?? "";
        var words = Sentence(measure.Column[..^ending.Length]);
        return words.EndsWith(" sit", StringComparison.Ordinal) || words.EndsWith(" top", StringComparison.Ordinal) ? words[..^3] + "at the " + words[^3..] : words;
    }

    internal static string Unit(MeasureDefinition measure) => measure.Unit == "% of leg length" ? "% of leg" : measure.Unit;

    /// <summary>A value with the half width of its 95 % interval, without its unit.</summary>
    internal static string Value(Measured value) => value.IsMissing ? "not measured"
        : double.IsFinite(value.HalfWidth95) ? string.Create(CultureInfo.InvariantCulture, $"{value.Value:0.#} ± {value.HalfWidth95:0.#}")
        : string.Create(CultureInfo.InvariantCulture, $"{value.Value:0.#}");

    private static string Sentence(string term) => char.ToUpperInvariant(term[0]) + term[1..].Replace('_', ' ');
}
