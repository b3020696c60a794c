using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>A fault in a spell that a coach should look at, as it is written to the flags table.</summary>
/// <param name="Probability">0..1, of the fault model where one is in use, else of the rule.</param>
/// <param name="Rule">The rule's finding of the same fault; null where it finds nothing.</param>
/// <param name="Drivers">The few measures that speak for it, in plain words, the strongest first.</param>
/// <param name="StartSeconds">Where to begin to look, s from the start of the video.</param>
/// <param name="EndSeconds">Where to stop, s.</param>
/// <param name="Summary">One line for people.</param>
/// <param name="ClassifierHash">The fault model that was asked; null where none is in use.</param>
/// <param name="IsFloor">Whether the model is calm and the rule's clear breach alone makes the flag.</param>
public sealed record FlagRecord(
    RiddenSpell Spell,
    Fault Fault,
    double Probability,
    Finding? Rule,
    IReadOnlyList<string> Drivers,
    double StartSeconds,
    double EndSeconds,
    string Summary,
    string? ClassifierHash,
    bool IsFloor);
