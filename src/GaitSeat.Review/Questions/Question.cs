using System.Globalization;
using GaitSeat.Faults.Flags;
using GaitSeat.Model;

namespace GaitSeat.Review.Questions;

/// <summary>What a judge is asked: is this fault in this spell, or, of a spell drawn at random, is there any?</summary>
/// <param name="Score">What the tool says of the fault; null where any fault is asked for.</param>
/// <param name="Flag">The flag with its reasons; null where the fault is not flagged.</param>
public sealed record Question(RiddenSpell Spell, Drawn Drawn, SpellScore? Score, Flag? Flag)
{
    private const int ClipDigits = 16;

    public Fault? Fault => Score?.Fault;

    /// <summary>The same from start to start of the program, so that a link to it keeps its meaning.</summary>
    public string Id { get; } = string.Create(CultureInfo.InvariantCulture, $"{Spell.Provenance.ClipKey[..ClipDigits]}-{Spell.Spell.Number}-{Score?.Fault.ToTerm() ?? "any"}");

    /// <summary>Where to begin to look, s from the start of the video.</summary>
    public double StartSeconds => Flag?.StartSeconds ?? Spell.Spell.StartSeconds;

    public double EndSeconds => Flag?.EndSeconds ?? Spell.Spell.EndSeconds;
}
