using GaitSeat.Model;

namespace GaitSeat.Faults.Verdicts;

/// <summary>What the verdicts on one fault come to.</summary>
/// <param name="Labels">Spells on which the judges agree among themselves: true where the fault is there.</param>
/// <param name="CannotTell">Spells of which every judge said that the picture does not show it.</param>
/// <param name="Ties">Spells on which as many judges said yes as no; not learnt from.</param>
/// <param name="Superseded">Verdicts a later one of the same judge took the place of.</param>
/// <param name="OtherRun">Verdicts on spells of other settings or models: spell numbers need not mean the same there.</param>
public sealed record LabelSet(Fault Fault, IReadOnlyDictionary<SpellKey, bool> Labels, int CannotTell, int Ties, int Superseded, int OtherRun)
{
    public int Positives => Labels.Values.Count(there => there);

    public int Negatives => Labels.Count - Positives;
}

/// <summary>Verdicts as labels: of each judge the latest, of several judges the majority.</summary>
public static class VerdictLabels
{
    /// <param name="verdicts">The whole history, in any order.</param>
    /// <param name="pipelineHash">The run whose spells are to be labelled.</param>
    public static LabelSet Of(Fault fault, IEnumerable<Verdict> verdicts, string pipelineHash, string modelHash)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        var ofFault = verdicts.Where(v => v.Fault == fault).ToArray();
        var ofRun = ofFault.Where(v => v.PipelineHash == pipelineHash && v.ModelHash == modelHash).ToArray();
        var latest = ofRun.GroupBy(v => (Key: new SpellKey(v.ClipKey, v.SpellNumber), v.Judge)).Select(g => (g.Key.Key, g.OrderBy(v => v.JudgedAt).Last().Answer)).ToArray();
        var votes = latest.GroupBy(v => v.Key).ToDictionary(g => g.Key, g => (Yes: g.Count(v => v.Answer == VerdictAnswer.Agrees), No: g.Count(v => v.Answer == VerdictAnswer.DoesNot)));
        return new(
            fault,
            votes.Where(v => v.Value.Yes != v.Value.No).ToDictionary(v => v.Key, v => v.Value.Yes > v.Value.No),
            votes.Count(v => v.Value is (0, 0)),
            votes.Count(v => v.Value.Yes == v.Value.No && v.Value.Yes > 0),
            ofRun.Length - latest.Length,
            ofFault.Length - ofRun.Length);
    }
}
