using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults;

/// <summary>
/// Chair seat: the lower leg lies ahead of the seat. The foot counts as ahead only when both the tread is far ahead of the hip and
/// the heel is ahead of the plumb line: in an upright seat with the heel under the hip the tread, the ball of the foot, already lies
/// some 15 cm ahead (foot length 0.152 of stature, Drillis and Contini 1966).
/// </summary>
public sealed record ChairSeatRule
{
    /// <summary>Tread ahead of the hip at the sit above which the foot is ahead of the seat, cm. Common practice, no source.</summary>
    [Range(-50, 100)]
    public double FootAheadCm { get; init; } = 22;

    /// <summary>The same, percent of leg length; 22 cm of an 80 cm leg.</summary>
    [Range(-60, 120)]
    public double FootAheadPctLeg { get; init; } = 27.5;

    /// <summary>Heel ahead of the plumb line through the hip above which the heel is ahead, cm. Common practice, no source.</summary>
    [Range(-50, 100)]
    public double HeelAheadCm { get; init; } = 6;

    /// <summary>The same, percent of leg length; 6 cm of an 80 cm leg.</summary>
    [Range(-60, 120)]
    public double HeelAheadPctLeg { get; init; } = 7.5;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}

/// <summary>Fork seat: the lower leg lies behind the seat and the trunk tips forward over it.</summary>
public sealed record ForkSeatRule
{
    /// <summary>Heel behind the plumb line through the hip beyond which the leg is behind, cm. Common practice, no source.</summary>
    [Range(-50, 100)]
    public double HeelBehindCm { get; init; } = 10;

    /// <summary>The same, percent of leg length; 10 cm of an 80 cm leg.</summary>
    [Range(-60, 120)]
    public double HeelBehindPctLeg { get; init; } = 12.5;

    /// <summary>Trunk lean at the sit above which the rider tips forward, deg. Common practice, no source.</summary>
    [Range(-45, 90)]
    public double TrunkLeanDeg { get; init; } = 12;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}

/// <summary>
/// Pressing the stirrup: the foot is pushed forward as the seat goes back. Read from a foot that travels within the stride and stands
/// ahead of the seat at the sit; the stride table has no phase between the two, so the coach must look.
/// </summary>
public sealed record PressingTheStirrupRule
{
    /// <summary>Travel of the tread within the stride above which it swings, cm. Common practice, no source.</summary>
    [Range(0, 100)]
    public double DriftSwingCm { get; init; } = 6;

    /// <summary>The same, percent of leg length; 6 cm of an 80 cm leg.</summary>
    [Range(0, 120)]
    public double DriftSwingPctLeg { get; init; } = 7.5;

    /// <summary>Tread ahead of the hip at the sit above which the foot is ahead of the seat, cm. Common practice, no source; see the chair seat.</summary>
    [Range(-50, 100)]
    public double FootAheadCm { get; init; } = 18;

    /// <summary>The same, percent of leg length; 18 cm of an 80 cm leg.</summary>
    [Range(-60, 120)]
    public double FootAheadPctLeg { get; init; } = 22.5;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}

/// <summary>Forced heel: the heel is rammed down and the foot pushed forward with it.</summary>
public sealed record ForcedHeelRule
{
    /// <summary>Foot pitch at the sit above which the heel is forced, deg, toe above heel. Common practice, no source.</summary>
    [Range(-45, 90)]
    public double FootPitchDeg { get; init; } = 20;

    /// <summary>Tread ahead of the hip at the sit above which the foot is ahead of the seat, cm. Common practice, no source; see the chair seat.</summary>
    [Range(-50, 100)]
    public double FootAheadCm { get; init; } = 18;

    /// <summary>The same, percent of leg length; 18 cm of an 80 cm leg.</summary>
    [Range(-60, 120)]
    public double FootAheadPctLeg { get; init; } = 22.5;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}

/// <summary>Swinging lower leg: the foot travels to and fro within the stride. Left unsaid in a spell where the more telling pressing the stirrup is found.</summary>
public sealed record SwingingLowerLegRule
{
    /// <summary>Travel of the tread within the stride above which the lower leg swings, cm. Common practice, no source; the 5.2 deg lower-leg range of Lovett et al. 2005 moves the foot of a 40 cm shank by 3.6 cm.</summary>
    [Range(0, 100)]
    public double DriftSwingCm { get; init; } = 8;

    /// <summary>The same, percent of leg length; 8 cm of an 80 cm leg.</summary>
    [Range(0, 120)]
    public double DriftSwingPctLeg { get; init; } = 10;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } = "common practice, no source; about twice the lower-leg range of Lovett et al. 2005 (5.2 deg)";
}
