using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Vision.Sight;

/// <summary>The person and horse detector.</summary>
public sealed record DetectorSettings
{
    /// <summary>Lowest score kept, 0..1. Horses of trotting clips were found in 90 % of frames above 0.25; the rest is told apart over time, so faint ones are kept for it.</summary>
    [Range(0.01, 1.0)]
    public double ScoreMinimum { get; init; } = 0.2;

    /// <summary>Two boxes of one kind that overlap more than this (shared over joint area) are one. 0.6 is the detector's own setting (its published configuration, from memory).</summary>
    [Range(0.1, 1.0)]
    public double OverlapMaximum { get; init; } = 0.6;
}
