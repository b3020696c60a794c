using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>
/// How far the rider is turned out of the picture plane. A camera that stands in one place and follows a rider sees her grow while she comes nearer: with k the relative growth
/// a second and w her speed across the picture against the surroundings over the focal length, tan(turn) = -k / w (closed form). The focal length is not known; what is thought of it
/// is weighed by the settings here.
/// </summary>
public sealed record ViewSettings
{
    /// <summary>Half width of the window over which growth and speed are taken, s: five strides in all, so that the rise does not read as growth.</summary>
    [Range(0.5, 10.0)]
    public double WindowHalfSeconds { get; init; } = 2;

    /// <summary>Step from window to window, s.</summary>
    [Range(0.1, 5.0)]
    public double StepSeconds { get; init; } = 1;

    /// <summary>Slowest pace at which growth tells the turn, legs a second: below it the rider is as good as standing.</summary>
    [Range(0.05, 5.0)]
    public double LeastLegsPerSecond { get; init; } = 0.8;

    /// <summary>Usual distance of the camera, legs (14 m). Common practice, no source: from the middle or the side of a school of 20 by 40 m, or over its fence.</summary>
    [Range(2.0, 200.0)]
    public double DistanceLegs { get; init; } = 17;

    /// <summary>Spread of that distance, one standard deviation of its natural logarithm: two in three lie between 8 and 24 m. No source.</summary>
    [Range(0.05, 2.0)]
    public double DistanceSpread { get; init; } = 0.55;

    /// <summary>Share of stretches ridden straight, 0..1; the others follow a bend. No source.</summary>
    [Range(0.01, 0.99)]
    public double StraightShare { get; init; } = 0.6;

    /// <summary>How far a straight stretch wanders, deg a second. No source.</summary>
    [Range(0.1, 20.0)]
    public double WanderDegPerSecond { get; init; } = 1.5;

    /// <summary>How fast the horse turns in a bend, deg a second, one standard deviation: 3 m/s on a circle of 20 m are 17, on one of 40 m 9.</summary>
    [Range(1.0, 90.0)]
    public double BendDegPerSecond { get; init; } = 12;

    /// <summary>Error of the growth that does not average out, share a second: models see a turned body a little taller or shorter. On rendered riders 0.1 to 0.3 %.</summary>
    [Range(0.0, 0.1)]
    public double GrowthSePerSecond { get; init; } = 0.0025;

    /// <summary>How fast the thigh's share of the height from ear to ankle seems to change, a second, one standard deviation: models see hip and knee of a turned body shifted. On drawn riders 0.002 to 0.006.</summary>
    [Range(0.0, 0.1)]
    public double ThighShareSlopePerSecond { get; init; } = 0.004;

    /// <summary>Zoom of the surroundings below which none is believed, share a second: people zoom by more, or not at all. No source.</summary>
    [Range(0.0, 0.2)]
    public double ZoomBelievedPerSecond { get; init; } = 0.007;

    /// <summary>Share of stretches during which the camera zooms, 0..1. No source.</summary>
    [Range(0.01, 0.99)]
    public double ZoomShare { get; init; } = 0.3;

    /// <summary>How fast people zoom, share a second, one standard deviation. No source.</summary>
    [Range(0.001, 1.0)]
    public double ZoomUsualPerSecond { get; init; } = 0.05;

    /// <summary>
    /// How high the surroundings that are followed reach over how wide, in a square picture: sky and open ground show little. On drawn clips 0.7 (16:9) and 0.6 (9:16). A panning lens
    /// stretches what lies off the middle of the picture twice as fast across as up (closed form), so that it depends on this how much of a zoom they seem to show.
    /// </summary>
    [Range(0.05, 1.0)]
    public double SurroundingsHighOfWide { get; init; } = 0.65;

    /// <summary>What share of the turn near and far shoulder and hip show, 0..2. On rendered riders 0.35 to 0.4.</summary>
    [Range(0.05, 2.0)]
    public double SeenGain { get; init; } = 0.38;

    /// <summary>Steady error of the seen turn within a clip, deg, one standard deviation: side-on it was -3 on rendered riders, +4 on drawn ones.</summary>
    [Range(0.1, 45.0)]
    public double SeenSteadySeDeg { get; init; } = 5;

    /// <summary>Error of the change of the seen turn, deg a second.</summary>
    [Range(0.05, 20.0)]
    public double SeenChangeSeDegPerSecond { get; init; } = 1;

    /// <summary>How far from side-on people film, deg, one standard deviation. No source.</summary>
    [Range(1.0, 90.0)]
    public double UsualTurnDeg { get; init; } = 15;

    /// <summary>Least standard error of a turn, deg: what the model of a pinhole that stands still leaves out. No source.</summary>
    [Range(0.0, 20.0)]
    public double LeastSeDeg { get; init; } = 1.5;
}
