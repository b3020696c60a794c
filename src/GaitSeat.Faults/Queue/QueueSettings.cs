using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults.Queue;

/// <summary>How the coach's time is spent.</summary>
public sealed record QueueSettings
{
    /// <summary>Time a coach needs to open a spell and to answer, s. Default 20: our own estimate, no source.</summary>
    [Range(0, 3600)]
    public double AnswerSeconds { get; init; } = 20;

    /// <summary>How often a spell is watched, times. Default 2: common practice, no source.</summary>
    [Range(0.1, 20)]
    public double Replays { get; init; } = 2;

    /// <summary>Share of the time for spells that teach the tool and not, at once, the rider, percent. Default 20: common practice, no source.</summary>
    [Range(0, 90)]
    public double ExplorationPct { get; init; } = 20;

    /// <summary>Share of the exploration that is drawn at random among unflagged spells, percent; the rest goes to the most uncertain. Default 50: common practice, no source.</summary>
    [Range(0, 100)]
    public double RandomPct { get; init; } = 50;

    /// <summary>Distance from even odds within which a spell counts as uncertain, 0..0.5. Default 0.3: from 0.2 to 0.8; common practice, no source.</summary>
    [Range(0.01, 0.5)]
    public double UncertainWithin { get; init; } = 0.3;
}
