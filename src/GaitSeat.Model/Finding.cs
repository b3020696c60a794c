namespace GaitSeat.Model;

/// <summary>Faults a finding can name: terms of the trade.</summary>
public enum Fault
{
    StirrupShort,
    StirrupLong,
    SmallRise,
    ChairSeat,
    ForkSeat,
    PressingTheStirrup,
    ForcedHeel,
    SwingingLowerLeg,
    BusyHands,
    BehindTheMovement,
    AheadOfTheMovement,
    HeavyLanding,
    IrregularRise,
}

/// <summary>A prompt for the coach's eye: what was measured, against what, how sure, and where to look.</summary>
/// <param name="Measure">Column name of the measure that was compared.</param>
/// <param name="Value">The spell's mean of it.</param>
/// <param name="Threshold">The limit it was held against, same unit.</param>
/// <param name="ProbabilityPastThreshold">Probability that the true value is past the threshold, given the standard error.</param>
/// <param name="Source">Where the threshold comes from: a published source, or "common practice, no source".</param>
/// <param name="StrideNumbers">Strides of the spell that show it.</param>
/// <param name="Summary">One plain line for the coach.</param>
public sealed record Finding(
    int SpellNumber,
    Fault Fault,
    string Measure,
    Measured Value,
    double Threshold,
    string Unit,
    double ProbabilityPastThreshold,
    string Source,
    double StartSeconds,
    double EndSeconds,
    IReadOnlyList<int> StrideNumbers,
    string Summary);
