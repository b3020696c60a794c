using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Study.Planning;

/// <summary>
/// A season that could be ridden, and what is believed of the spreads in it. Outcome in its own unit (cm for a rise height), lengths in cm.
/// The defaults of the spreads have no source: take them from the reliability of a season that was measured.
/// </summary>
public sealed record SeasonPlanSettings
{
    [Range(2, 10_000)]
    public int Riders { get; init; } = 20;

    /// <summary>Stirrup lengths each rider rides at, evenly about their own.</summary>
    [Range(2, 20)]
    public int LengthsPerRider { get; init; } = 3;

    /// <summary>From one length to the next; a hole is about 2.5 cm (common practice, no source).</summary>
    [Range(0.1, 20.0)]
    public double LengthStepCm { get; init; } = 2.5;

    [Range(1, 10_000)]
    public int StridesPerLength { get; init; } = 20;

    /// <summary>Horses in the yard; 0 leaves them out.</summary>
    [Range(0, 10_000)]
    public int Horses { get; init; } = 8;

    /// <summary>Horses each rider rides.</summary>
    [Range(1, 100)]
    public int HorsesPerRider { get; init; } = 2;

    /// <summary>True effect within a rider, per cm.</summary>
    [Range(-100.0, 100.0)]
    public double EffectPerCm { get; init; } = 0.2;

    /// <summary>Difference between riders per cm of their mean length: not what is asked for, and not the same where tall riders differ.</summary>
    [Range(-100.0, 100.0)]
    public double BetweenRidersPerCm { get; init; } = 0.1;

    /// <summary>Spread of the riders' own lengths.</summary>
    [Range(0.0, 50.0)]
    public double RiderLengthSdCm { get; init; } = 4;

    /// <summary>Spread between riders at their own length.</summary>
    [Range(0.0, 1000.0)]
    public double RiderSd { get; init; } = 2;

    /// <summary>Spread of the effect between riders, per cm.</summary>
    [Range(0.0, 100.0)]
    public double EffectSdPerCm { get; init; } = 0.1;

    /// <summary>Correlation of the two.</summary>
    [Range(-0.99, 0.99)]
    public double Correlation { get; init; } = 0.2;

    [Range(0.0, 1000.0)]
    public double HorseSd { get; init; } = 1;

    /// <summary>Spread between a rider's sessions at one length; each length is ridden in a session of its own. 0 leaves sessions out.</summary>
    [Range(0.0, 1000.0)]
    public double SessionSd { get; init; }

    /// <summary>Spread from stride to stride, measurement included.</summary>
    [Range(0.001, 1000.0)]
    public double StrideSd { get; init; } = 1;
}
