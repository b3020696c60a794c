using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>Outliers and low-pass.</summary>
public sealed record SmoothingSettings
{
    /// <summary>Half width of the Hampel window, s. Common practice, no source: longer than a run of bad frames, shorter than half a bounce.</summary>
    [Range(0.02, 1.0)]
    public double HampelHalfWindowSeconds { get; init; } = 0.15;

    /// <summary>Hampel limit in robust standard deviations. 3 is the usual choice (Hampel identifier; from memory).</summary>
    [Range(1.0, 20.0)]
    public double HampelSigmas { get; init; } = 3.5;

    /// <summary>Deviations below this are never outliers, percent of leg length. 2 % is the noise of one good point (about 1 % of rider height).</summary>
    [Range(0.0, 20.0)]
    public double HampelFloorPctLeg { get; init; } = 2.0;

    /// <summary>Lowest cut-off the residual analysis may choose, Hz. At 6 Hz the 2.8 Hz bounce loses 1.0 % (closed form).</summary>
    [Range(1.0, 30.0)]
    public double MinCutoffHz { get; init; } = 6;

    /// <summary>Highest cut-off the residual analysis may choose, Hz. At 10 Hz the bounce's second harmonic loses 3 % (closed form).</summary>
    [Range(1.0, 60.0)]
    public double MaxCutoffHz { get; init; } = 10;

    /// <summary>Lowest rate of the even grid the tracks are put on before filtering, Hz. Five to ten times the highest frequency of use is common practice; 100 Hz is ten times the highest cut-off.</summary>
    [Range(50.0, 500.0)]
    public double MinGridHz { get; init; } = 100;

    /// <summary>How long a model's error on a point hangs together at the least, s: it sets how many independent values a stride has. No source: some three frames at 25 to 30 fps on either side.</summary>
    [Range(0.0, 2.0)]
    public double NoiseTogetherSeconds { get; init; } = 0.15;
}
