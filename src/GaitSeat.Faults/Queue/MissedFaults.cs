using GaitSeat.Faults.Evaluation;
using GaitSeat.Model;

namespace GaitSeat.Faults.Queue;

/// <summary>How often a fault is missed, estimated without bias from spells drawn at random among those without a flag.</summary>
/// <param name="Judged">Random spells of which a coach could tell.</param>
/// <param name="Missed">Those in which a coach saw a fault.</param>
/// <param name="Rate">Share missed, with its interval; not a number where none was judged.</param>
/// <param name="CannotTell">Random spells nobody could tell of; left out.</param>
public sealed record MissedFaults(int Judged, int Missed, Interval Rate, int CannotTell)
{
    /// <summary>Of each judge the latest word on each fault counts; a spell is missed where any judge sees any fault in it.</summary>
    public static MissedFaults Of(IEnumerable<Verdict> verdicts, double confidence)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        var spells = verdicts.Where(v => v.Drawn == Drawn.Random && v.ToldFlagged == false)
            .GroupBy(v => (v.ClipKey, v.SpellNumber, v.Fault, v.Judge)).Select(g => g.OrderBy(v => v.JudgedAt).Last())
            .GroupBy(v => (v.ClipKey, v.SpellNumber)).Select(g => g.Select(v => v.Answer).ToHashSet()).ToArray();
        var (missed, cannotTell) = (spells.Count(s => s.Contains(VerdictAnswer.Agrees)), spells.Count(s => s.SetEquals([VerdictAnswer.CannotTell])));
        var judged = spells.Length - cannotTell;
        return new(judged, missed, WilsonInterval.Of(missed, judged, confidence), cannotTell);
    }
}
