using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>Standard errors.</summary>
public sealed record UncertaintySettings
{
    /// <summary>Draws of the Monte Carlo a stride. 64 draws give a standard error known to 9 % (closed form).</summary>
    [Range(8, 10000)]
    public int Draws { get; init; } = 64;

    /// <summary>Seed of the Monte Carlo.</summary>
    [Range(0, int.MaxValue)]
    public int Seed { get; init; } = 20240611;
}
