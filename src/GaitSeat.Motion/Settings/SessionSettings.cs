using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>
/// Changes of stirrup length and differences between reins. The sizes of errors are what 248 strides of 42 made clips over the whole range of footage showed against
/// their truth: between clips other riders, horses and cameras are in them, so within one session they are rather too large; how much a rider truly wanders is not in them.
/// </summary>
public sealed record SessionSettings
{
    /// <summary>Fewest strides on either side of a change. Own choice: one stride could be a stumble.</summary>
    [Range(2, 1000)]
    public int LeastStrides { get; init; } = 2;

    /// <summary>
    /// Shortest pause in the strides in which leathers can be changed, s; between two clips it is always long enough. Common practice, no source: a rider takes the leg
    /// forward off the flap and one hand off the reins, in walk or halt. 0 looks between any two strides; of 24 made clips without a change one was then called changed, by a turning view.
    /// </summary>
    [Range(0.0, 600.0)]
    public double PauseSeconds { get; init; } = 2.0;

    /// <summary>How often a ride without any change may be said to hold one, over all places and sides searched, 0..1.</summary>
    [Range(0.0001, 0.5)]
    public double FalseAlarmLevel { get; init; } = 0.05;

    /// <summary>Most rides without a change that are drawn to compare with: the smallest probability that can be told is one over this.</summary>
    [Range(99, 100000)]
    public int Draws { get; init; } = 999;

    /// <summary>Drawing ends when so many drawn rides showed as much: the probability is then known to about 20 % (Besag and Clifford 1991, from memory).</summary>
    [Range(5, 1000)]
    public int EnoughExceedances { get; init; } = 25;

    /// <summary>Seed of the drawn rides.</summary>
    [Range(0, int.MaxValue)]
    public int Seed { get; init; } = 20261125;

    /// <summary>Thigh angle at the sit, scatter from stride to stride, deg, one standard deviation. Measured 1.33.</summary>
    [Range(0.01, 20.0)]
    public double ThighScatterDeg { get; init; } = 1.2;

    /// <summary>Its error that wanders within a clip as the view turns, deg. Measured: differences of strides 6 s apart call for 2.</summary>
    [Range(0.0, 20.0)]
    public double ThighSlowDeg { get; init; } = 2.0;

    /// <summary>Its error that is steady in a clip and differs between clips, deg. Measured 2.8.</summary>
    [Range(0.0, 20.0)]
    public double ThighClipDeg { get; init; } = 2.8;

    /// <summary>Stirrup length index, scatter from stride to stride, percent of leg length. Measured 1.24.</summary>
    [Range(0.01, 20.0)]
    public double IndexScatterPctLeg { get; init; } = 1.15;

    /// <summary>Its error that wanders within a clip, percent of leg length. Measured 1.3.</summary>
    [Range(0.0, 20.0)]
    public double IndexSlowPctLeg { get; init; } = 1.3;

    /// <summary>Its error that is steady in a clip, percent of leg length. Measured 3.3.</summary>
    [Range(0.0, 20.0)]
    public double IndexClipPctLeg { get; init; } = 3.3;

    /// <summary>How the wandering and the steady errors of thigh angle and index go together, -1..1. Measured -0.48 between clips.</summary>
    [Range(-0.95, 0.95)]
    public double ErrorCorrelation { get; init; } = -0.45;

    /// <summary>Other measures: scatter from stride to stride over the standard error of a stride. Measured 0.35 for the trunk, 0.7 for the rise.</summary>
    [Range(0.01, 5.0)]
    public double ScatterShare { get; init; } = 0.5;

    /// <summary>Other measures: error that wanders within a clip, over the standard error of a stride. Measured 0.3 to 0.8 for knee and trunk, less for the rise.</summary>
    [Range(0.0, 5.0)]
    public double SlowShare { get; init; } = 0.5;

    /// <summary>Other measures: error that is steady in a clip, over the standard error of a stride. Measured 0.6 (rise) to 0.93 (foot).</summary>
    [Range(0.0, 5.0)]
    public double ClipShare { get; init; } = 0.8;

    /// <summary>How long the wandering error hangs together, s. Measured: differences grow over 4 to 6 s.</summary>
    [Range(0.1, 600.0)]
    public double SlowSeconds { get; init; } = 4.0;

    /// <summary>Worth of the sizes above against the session's own scatter, in strides or clips. Own choice: a clip of five strides tells little of its own scatter.</summary>
    [Range(0.5, 1000.0)]
    public double PriorWeight { get; init; } = 6.0;

    /// <summary>Strides of one clip that are taken together to see whether a session wanders more than the sizes above say. Own choice.</summary>
    [Range(2, 100)]
    public int BlockStrides { get; init; } = 5;

    /// <summary>
    /// How far models read a rider seen from the right otherwise than one seen from the left, over the standard error of a stride, one standard deviation.
    /// Measured: right less left 2.8 +- 0.9 deg for the thigh, -3.0 +- 1.0 % for the index, 0.1 to 0.7 of a standard error over the measures.
    /// </summary>
    [Range(0.0, 5.0)]
    public double SideShare { get; init; } = 0.5;
}
