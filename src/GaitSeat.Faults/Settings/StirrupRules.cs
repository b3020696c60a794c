using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults;

/// <summary>Stirrup short: the thigh lies too flat at the sit.</summary>
public sealed record StirrupShortRule
{
    /// <summary>Thigh angle at the sit that a flat-work length reads, deg. Only told to the coach, not a limit. Common practice, no source.</summary>
    [Range(0, 90)]
    public double FlatWorkDeg { get; init; } = 45;

    /// <summary>Thigh angle at the sit above which the stirrup reads short, deg. Common practice, no source.</summary>
    [Range(0, 90)]
    public double ShortDeg { get; init; } = 50;

    /// <summary>Thigh angle at the sit above which it is clearly short, deg. Common practice, no source.</summary>
    [Range(0, 90)]
    public double ClearlyShortDeg { get; init; } = 55;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}

/// <summary>Stirrup long, the rider reaching for it: a steep thigh at the sit together with a small rise or a nearly straight knee.</summary>
public sealed record StirrupLongRule
{
    /// <summary>Thigh angle at the sit below which the thigh hangs steep, deg: as far under a flat-work 45 as 55 is over it. Common practice, no source.</summary>
    [Range(0, 90)]
    public double SteepThighDeg { get; init; } = 35;

    /// <summary>Rise below which there is no room left to rise, cm. Common practice, no source: no published rise height was found.</summary>
    [Range(0, 50)]
    public double SmallRiseCm { get; init; } = 6;

    /// <summary>The same, percent of leg length; 6 cm of an 80 cm leg.</summary>
    [Range(0, 60)]
    public double SmallRisePctLeg { get; init; } = 7.5;

    /// <summary>Knee angle at the sit above which the leg is nearly straight, deg: 118 + 3 x 8, three SD over the knee of experienced riders at their own flat-work length (Rudd et al. 2018, halted horse).</summary>
    [Range(90, 180)]
    public double StraightKneeDeg { get; init; } = 142;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } =
        "thigh and rise: common practice, no source; knee: three SD over 118 (SD 8) deg of experienced riders at halt, Rudd et al. 2018 (Comp Exerc Physiol)";
}
