using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>Cutting into strides, and the per-stride measures.</summary>
public sealed record StrideSettings
{
    /// <summary>The tread's place on the line from heel (0) to toe (1): the ball of the foot. No source: on the rendered riders it lies at 0.58 to 0.59.</summary>
    [Range(0.0, 1.0)]
    public double TreadOnFoot { get; init; } = 0.59;

    /// <summary>Height over the sit, as a share of the rise, at which the two sides of a sit are taken; the sit instant is half way between them. A seat rests flat on the saddle for part of the stride: its very lowest sample wanders with the noise, the middle of the flat does not.</summary>
    [Range(0.05, 0.5)]
    public double SitLevelShare { get; init; } = 0.25;

    /// <summary>Largest departure of a stride's duration from the spell's, as a share. Within a horse the duration varies by about 2 % (Drevemo 1980); ten times that is another stride or none.</summary>
    [Range(0.05, 1.0)]
    public double MaxDurationDeparture { get; init; } = 0.25;

    /// <summary>How far a true sit lies from where its neighbours foretell it, share of a stride, one standard deviation. Within a horse the duration varies by about 2 % (Drevemo 1980); a sit that was seen better than this keeps its own place.</summary>
    [Range(0.001, 0.5)]
    public double RhythmSpreadShare { get; init; } = 0.02;

    /// <summary>Smallest rise of a stride, percent of leg length; below it the seat did not leave the saddle. About 1 cm; the seat moves some 2 cm on the saddle in sitting trot, at twice the frequency.</summary>
    [Range(0.0, 20.0)]
    public double MinRisePctLeg { get; init; } = 1.5;

    /// <summary>Half width of the span around sit and top over which angles are averaged, share of the stride: 5 % by definition.</summary>
    [Range(0.005, 0.2)]
    public double AngleHalfSpan { get; init; } = 0.05;

    /// <summary>Half width of the span a parabola is laid through to read a level at sit or top, share of the stride. A half sine over 56 % of the stride is read 0.04 % low (closed form).</summary>
    [Range(0.01, 0.2)]
    public double LevelHalfSpan { get; init; } = 0.08;

    /// <summary>Last share of the stride in which the sit impact is looked for: 15 % by definition.</summary>
    [Range(0.02, 0.5)]
    public double ImpactSpan { get; init; } = 0.15;

    /// <summary>Height of the hip joint over the stirrup bar at the sit, percent of leg length; hip to tread less this is the leather's length from bar to tread. No source: on the rendered riders 25 cm of an 82 cm leg.</summary>
    [Range(0.0, 80.0)]
    public double HipToBarPctLeg { get; init; } = 30;

    /// <summary>Standard error of <see cref="HipToBarPctLeg"/>. No source.</summary>
    [Range(0.0, 40.0)]
    public double HipToBarSePctLeg { get; init; } = 5;
}
