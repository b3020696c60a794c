using System.Globalization;
using GaitSeat.Faults.Flags;
using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>Why a question is asked and what rule and model say to it, in plain lines.</summary>
internal static class Reasons
{
    internal static string Why(Question question) => question.Drawn switch
    {
        Drawn.Random => "Nothing is flagged here. It was drawn at random, to learn what the tool misses.",
        Drawn.Uncertain => "The tool is unsure here; your answer teaches most.",
        _ => question.Flag is null ? "Judged before." : "Flagged.",
    };

    internal static IReadOnlyList<string> Rule(Question question) => question.Score switch
    {
        null => ["No rule is broken in this spell."],
        { Rule: { } rule } => [rule.Summary, Text($"Mean {rule.Value.Value:0.#} ± {rule.Value.HalfWidth95:0.#} {rule.Unit} against a limit of {rule.Threshold:0.##} {rule.Unit}; probability past it {100 * rule.ProbabilityPastThreshold:0} %.")],
        _ => ["The rule finds nothing."],
    };

    internal static IReadOnlyList<string> Model(Question question) => question.Score switch
    {
        { ClassifierHash: { } hash } score => [Text($"Fault model {hash[..8]}: {100 * score.Probability:0} %."), .. question.Flag?.Drivers ?? []],
        null => [],
        _ => ["No fault model is in use for this fault; the rule alone speaks."],
    };

    internal static string Of(Flag flag) => Text($"{100 * flag.Score.Probability:0} %; {flag.StartSeconds:0.0} to {flag.EndSeconds:0.0} s");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
