using GaitSeat.Model;

namespace GaitSeat.Faults.Verdicts;

/// <summary>The verdicts that stand after withdrawals: each takes back the judge's latest answer on the fault in the spell that still stood.</summary>
public static class StandingVerdicts
{
    /// <param name="history">All rows, in any order.</param>
    /// <returns>By time; earlier answers a judge changed without withdrawing are still among them.</returns>
    public static IReadOnlyList<Verdict> Of(IEnumerable<Verdict> history)
    {
        ArgumentNullException.ThrowIfNull(history);
        return [.. history.GroupBy(v => (v.ClipKey, v.SpellNumber, v.Fault, v.Judge, v.PipelineHash, v.ModelHash)).SelectMany(Standing)
            .OrderBy(v => v.JudgedAt).ThenBy(v => v.ClipKey, StringComparer.Ordinal).ThenBy(v => v.SpellNumber).ThenBy(v => v.Fault)];
    }

    /// <summary>Within one second an answer comes before its withdrawal.</summary>
    private static IEnumerable<Verdict> Standing(IEnumerable<Verdict> ofOneFault)
    {
        var standing = new Stack<Verdict>();
        foreach (var verdict in ofOneFault.OrderBy(v => v.JudgedAt).ThenBy(v => v.Answer == VerdictAnswer.Withdrawn))
        {
            if (verdict.Answer != VerdictAnswer.Withdrawn) standing.Push(verdict);
            else standing.TryPop(out _);
        }

        return standing;
    }
}
