using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>Cutting into strides, and the per-stride measures.</summary>
public sealed record StrideSettings
{
    /// <summary>The tread's place on the line from heel (0) to toe (1): the ball of the foot. No source.</summary>
    [Range(0.0, 1.0)]
    public double TreadOnFoot { get; init; } = 0.6;
}
