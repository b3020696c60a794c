using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults;

/// <summary>Busy hands: the hand travels against the horse within the stride.</summary>
public sealed record BusyHandsRule
{
    /// <summary>RMS travel of the wrist in the trunk frame above which the hands are busy, cm. Common practice, no source; in sitting trot the wrist-to-bit distance of experienced riders changes by 1.5 cm (Terada et al. 2006).</summary>
    [Range(0, 100)]
    public double HandTravelCm { get; init; } = 4;

    /// <summary>The same, percent of leg length; 4 cm of an 80 cm leg.</summary>
    [Range(0, 120)]
    public double HandTravelPctLeg { get; init; } = 5;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}

/// <summary>Behind the movement: the trunk leans back at the sit.</summary>
public sealed record BehindTheMovementRule
{
    /// <summary>Trunk lean at the sit below which the rider is behind the movement, deg, + forward. Common practice, no source; at trot the trunk leans forward of vertical (walk and trot study, five expert riders, bibliography incomplete).</summary>
    [Range(-90, 45)]
    public double TrunkLeanDeg { get; init; } = -5;

    /// <summary>Where the limit comes from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}

/// <summary>Ahead of the movement: the trunk tips well forward at the sit.</summary>
public sealed record AheadOfTheMovementRule
{
    /// <summary>Trunk lean at the sit above which the rider is ahead of the movement, deg, + forward. Common practice, no source.</summary>
    [Range(-45, 90)]
    public double TrunkLeanDeg { get; init; } = 20;

    /// <summary>Where the limit comes from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}
