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

    private static string Sentence(string term) => char.ToUpperInvariant(term[0]) + term[1..].Replace('_', ' ');
}
