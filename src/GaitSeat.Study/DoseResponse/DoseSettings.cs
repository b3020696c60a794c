using System.ComponentModel.DataAnnotations;
using GaitSeat.Study.Mixed;

namespace GaitSeat.Study.DoseResponse;

/// <summary>The model of a dose–response question.</summary>
public sealed record DoseSettings
{
    public DoseShape Shape { get; init; } = DoseShape.Linear;

    /// <summary>Knots of the spline; 3 to 5 suffice (Harrell 2015, Regression Modeling Strategies, section 2.4.6).</summary>
    [Range(3, 7)]
    public int Knots { get; init; } = 4;

    public DoseComparison Comparison { get; init; } = DoseComparison.WithinRider;

    /// <summary>Each rider has a slope of their own; without it intervals of the effect are too narrow where riders differ (Barr et al. 2013, doi:10.1016/j.jml.2012.11.001).</summary>
    public bool RandomSlope { get; init; } = true;

    public HorseRole Horse { get; init; } = HorseRole.Crossed;

    /// <summary>
    /// Each session of a rider has a level of its own, where sessions are given: strides of one day are alike, and a length that is set once a day is compared between days.
    /// Without it the interval is that of so many independent strides.
    /// </summary>
    public bool Session { get; init; } = true;

    public MixedSettings Model { get; init; } = new();
}
