namespace GaitSeat.Model;

/// <summary>What a judge says to one fault in one spell. It is said of the fault, whether or not the tool had flagged it.</summary>
public enum VerdictAnswer
{
    /// <summary>The fault is there.</summary>
    Agrees,

    /// <summary>It is not.</summary>
    DoesNot,

    /// <summary>The picture does not show it well enough.</summary>
    CannotTell,

    /// <summary>Takes back the judge's latest answer on the fault; the one before it, if there was one, holds again.</summary>
    Withdrawn,
}

/// <summary>How a spell came before the judge. Only what was drawn at random says something of the spells nobody flagged.</summary>
public enum Drawn
{
    /// <summary>The judge picked it.</summary>
    Chosen,

    /// <summary>The queue put it first as the most useful to see.</summary>
    Ranked,

    /// <summary>The queue asked because the tool was unsure.</summary>
    Uncertain,

    /// <summary>The queue drew it at random among the spells without a flag.</summary>
    Random,
}

/// <summary>What a judge said of one fault in one spell. Never changed: a change of mind is a later verdict.</summary>
/// <param name="Judge">Pseudonym of who judged.</param>
/// <param name="JudgedAt">When, to the second.</param>
/// <param name="ToldFlagged">Whether the tool had flagged the fault when the judge looked; null where that is not known.</param>
/// <param name="ToldProbability">The probability the tool had given, 0..1; null where it gave none.</param>
/// <param name="PipelineHash">Settings the spell was measured with.</param>
/// <param name="ModelHash">Body-point models it was measured with.</param>
/// <param name="ClassifierHash">The fault model that had spoken; null where the rules alone had.</param>
public sealed record Verdict(
    string ClipKey,
    string ClipFile,
    int SpellNumber,
    Fault Fault,
    VerdictAnswer Answer,
    string Judge,
    DateTimeOffset JudgedAt,
    string? Note,
    Drawn Drawn,
    bool? ToldFlagged,
    double? ToldProbability,
    string PipelineHash,
    string ModelHash,
    string? ClassifierHash);
