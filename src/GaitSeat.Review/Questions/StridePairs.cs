using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>A stride of one clip and the stride of another shown beside it, sit to sit, s from the start of each video.</summary>
internal sealed record StridePair(double OwnStartSeconds, double OwnEndSeconds, double OtherStartSeconds, double OtherEndSeconds);

/// <summary>
/// Lays strides of two spells beside each other, first beside first, so that both clips can be played with their sits at the same moment. Only whole strides that follow each
/// other without a hole are taken: the longest such run of each spell.
/// </summary>
internal static class StridePairs
{
    /// <summary>Sits nearer than this are one: half a frame at 25 a second.</summary>
    private const double SameSitSeconds = 0.02;

    /// <param name="question">Of its spell the run is sought among the flagged strides first.</param>
    /// <returns>Empty where one of them has no stride.</returns>
    internal static IReadOnlyList<StridePair> Of(Question question, RiddenSpell other)
    {
        var flagged = question.Spell.Strides.Where(s => s.StartSeconds >= question.StartSeconds - SameSitSeconds && s.EndSeconds <= question.EndSeconds + SameSitSeconds);
        var own = LongestRun(flagged) is { Count: > 0 } some ? some : LongestRun(question.Spell.Strides);
        return [.. own.Zip(LongestRun(other.Strides), (a, b) => new StridePair(a.StartSeconds, a.EndSeconds, b.StartSeconds, b.EndSeconds))];
    }

    private static List<Stride> LongestRun(IEnumerable<Stride> strides)
    {
        List<Stride> longest = [], run = [];
        foreach (var stride in strides.Where(s => s.EndSeconds > s.StartSeconds).OrderBy(s => s.StartSeconds))
        {
            if (run.Count > 0 && Math.Abs(stride.StartSeconds - run[^1].EndSeconds) > SameSitSeconds) run = [];
            run.Add(stride);
            if (run.Count > longest.Count) longest = run;
        }

        return longest;
    }
}
