using GaitSeat.Model;

namespace GaitSeat.Faults.Rules;

/// <summary>
/// A fault as conditions on a spell's means: all of <see cref="All"/>, and, where <see cref="Any"/> is not empty, at least one of those.
/// The first of <see cref="All"/> names the finding.
/// </summary>
/// <param name="Against">What the value is held against, in words, without the source.</param>
internal sealed record FaultRule(Fault Fault, string Source, string Against, Condition[] All, Condition[] Any)
{
    public FaultRule(Fault fault, string source, string against, params Condition[] all)
        : this(fault, source, against, all, [])
    {
    }

    public IEnumerable<Condition> Conditions => All.Concat(Any);
}
