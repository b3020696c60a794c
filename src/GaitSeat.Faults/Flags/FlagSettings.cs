using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults.Flags;

/// <summary>When a spell is flagged, and what is said of it.</summary>
public sealed record FlagSettings
{
    /// <summary>Probability from which a model flags a spell, 0..1. Default 0.5: more likely there than not; common practice, no source.</summary>
    [Range(0.01, 0.99)]
    public double FlagProbability { get; init; } = 0.5;

    /// <summary>Probability of a rule from which it flags whatever the model says, 0..1. Default 0.95: past the limit beyond doubt; common practice, no source.</summary>
    [Range(0.5, 1)]
    public double ClearBreachProbability { get; init; } = 0.95;

    /// <summary>Most measures named as the reason, measures. Default 3: one line; common practice, no source.</summary>
    [Range(0, 20)]
    public int Drivers { get; init; } = 3;

    /// <summary>Least fall in log-odds by which a measure counts as a reason. Default 0.1: about a tenth of the odds; common practice, no source.</summary>
    [Range(0, 10)]
    public double LeastDriver { get; init; } = 0.1;
}
