using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Faults;

/// <summary>Small rise: the seat hardly leaves the saddle.</summary>
public sealed record SmallRiseRule
{
    /// <summary>Rise height below which the rise is small, cm. Common practice, no source; a hip that turns about a fixed knee by the 7.3 deg thigh range of Lovett et al. 2005 rises 3.6 cm, a lower bound.</summary>
    [Range(0, 50)]
    public double RiseCm { get; init; } = 5;

    /// <summary>The same, percent of leg length; 5 cm of an 80 cm leg.</summary>
    [Range(0, 60)]
    public double RisePctLeg { get; init; } = 6.25;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}

/// <summary>Heavy landing: the seat drops into the saddle. Needs a scale; there is no percent-of-leg form of this measure.</summary>
public sealed record HeavyLandingRule
{
    /// <summary>Downward seat speed late in the stride above which the landing is heavy, cm/s. Common practice, no source: a smooth (sinusoidal) 10 cm rise in 0.72 s passes 35 cm/s there, a 60 cm/s landing is that of a free fall from 1.8 cm.</summary>
    [Range(0, 500)]
    public double SitImpactCmS { get; init; } = 60;

    /// <summary>Where the limit comes from; carried by the finding.</summary>
    public string Source { get; init; } = Sources.CommonPractice;
}

/// <summary>Irregular rise: stride durations or rise heights differ more from stride to stride than a steady trot's do.</summary>
public sealed record IrregularRiseRule
{
    /// <summary>Coefficient of variation of stride duration above which the rhythm is irregular, percent: three times the 2 % within-horse variation of Drevemo et al. 1980 (30 Standardbred trotters at racing speed).</summary>
    [Range(0, 100)]
    public double DurationCvPct { get; init; } = 6;

    /// <summary>Coefficient of variation of rise height above which the rise is uneven, percent. Common practice, no source.</summary>
    [Range(0, 200)]
    public double RiseCvPct { get; init; } = 25;

    /// <summary>Where the limits come from; carried by the finding.</summary>
    public string Source { get; init; } =
        "duration: three times the within-horse 2 % of Drevemo et al. 1980 (Equine Vet J 12:60-65); rise: common practice, no source";
}
