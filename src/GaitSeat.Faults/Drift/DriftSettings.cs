using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults.Drift;

/// <summary>When the world counts as moved away from the training spells.</summary>
public sealed record DriftSettings
{
    /// <summary>Population stability index above which a feature has moved. Default 0.25: common practice (0.1 to 0.25 is watched, above has moved), no source.</summary>
    [Range(0.01, 10)]
    public double IndexLimit { get; init; } = 0.25;

    /// <summary>Confidence that the index is above what unchanged spells of these numbers would give, 0..1. Default 0.999: some thirty features are looked at each month; our own choice, no source.</summary>
    [Range(0.5, 0.999999)]
    public double Confidence { get; init; } = 0.999;

    /// <summary>Spells a month must have to be looked at, spells. Default 30: common practice, no source.</summary>
    [Range(2, 100000)]
    public int MinimumSpells { get; init; } = 30;
}
