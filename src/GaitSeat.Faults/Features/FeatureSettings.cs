using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults.Features;

/// <summary>How features are made of spells.</summary>
public sealed record FeatureSettings
{
    /// <summary>Trusted strides a spell must have to be judged, strides. Default 3: the least that shows a habit and has a spread; common practice, no source.</summary>
    [Range(1, 1000)]
    public int MinimumStrides { get; init; } = 3;

    /// <summary>Spells of the rider in other clips from which "this rider's usual" is told, spells. Default 3: a median of fewer follows a single odd one; common practice, no source.</summary>
    [Range(1, 1000)]
    public int MinimumUsualSpells { get; init; } = 3;
}
