using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>Gait windows and spells. Amplitudes are half of peak to peak, in percent of leg length, so that they hold without a scale.</summary>
public sealed record GaitSettings
{
    /// <summary>Length of a gait window, s: three trot strides.</summary>
    [Range(1.0, 10.0)]
    public double WindowSeconds { get; init; } = 2.4;

    /// <summary>Step from window to window, s.</summary>
    [Range(0.05, 2.0)]
    public double StepSeconds { get; init; } = 0.25;

    /// <summary>Shortest spell, s: what is shorter joins its neighbour.</summary>
    [Range(0.5, 20.0)]
    public double MinSpellSeconds { get; init; } = 1.5;
}
