using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>Where a clip is cut and which frames count.</summary>
public sealed record SegmentSettings
{
    /// <summary>Longest hole that is bridged by interpolation, s. 0.12 s is the limit of the vocabulary for a needed point.</summary>
    [Range(0.0, 0.5)]
    public double MaxHoleSeconds { get; init; } = 0.12;

    /// <summary>Shortest continuous stretch worth looking at, s. One walk stride lasts 1.1 s (Clayton 1995, from memory); shorter stretches show no gait.</summary>
    [Range(0.2, 10.0)]
    public double MinSegmentSeconds { get; init; } = 1.0;

    /// <summary>Largest turn of the rider out of the picture plane, deg. Below 20 deg 2-D joint angles differ little from 3-D (Stevens 2006); the turn is taken out, and up to 30 the errors of made clips stay those of smaller turns.</summary>
    [Range(1.0, 45.0)]
    public double MaxViewYawDeg { get; init; } = 30;

    /// <summary>Largest lean of the camera that is taken out, deg: a way over the ground that slants more is a slope. No source.</summary>
    [Range(0.0, 20.0)]
    public double MaxRollDeg { get; init; } = 6;

    /// <summary>How far the rider must go over the ground before that way tells the camera's lean, thigh lengths (3 m). No source.</summary>
    [Range(1.0, 100.0)]
    public double RollWayThighs { get; init; } = 7;
}
