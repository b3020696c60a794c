using GaitSeat.Study.Linear;

namespace GaitSeat.Study.DoseResponse;

/// <summary>Rows for a dose–response question, one per stride.</summary>
public sealed record DoseData
{
    public required double[] Outcome { get; init; }

    /// <summary>Name and values of the exposure, such as the leather's length.</summary>
    public required DesignColumn Exposure { get; init; }

    /// <summary>Columns adjusted for, such as the stride's duration; they are centred at their mean.</summary>
    public IReadOnlyList<DesignColumn> Adjustment { get; init; } = [];

    /// <summary>Rider of each row.</summary>
    public required string[] Riders { get; init; }

    /// <summary>Horse of each row, where horses are in the model.</summary>
    public string[]? Horses { get; init; }

    /// <summary>Session of each row, where sessions are in the model; the same name under two riders is two sessions.</summary>
    public string[]? Sessions { get; init; }

    /// <summary>Known variance with which each outcome was measured, or nothing.</summary>
    public double[]? MeasurementVariance { get; init; }

    /// <summary>Weight of each row, or nothing; not together with <see cref="MeasurementVariance"/>.</summary>
    public double[]? Weights { get; init; }
}

/// <summary>Shape of the mean against the exposure.</summary>
public enum DoseShape
{
    Linear,
    Quadratic,

    /// <summary>Natural cubic spline, knots at quantiles.</summary>
    Spline,
}

/// <summary>How horses enter.</summary>
public enum HorseRole
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>A horse is the same horse under every rider.</summary>
    Crossed,

    /// <summary>A horse's name means another pair with each rider.</summary>
    Nested,
}

/// <summary>Which comparison answers the question.</summary>
public enum DoseComparison
{
    /// <summary>
    /// Each rider with themselves at other lengths: the exposure is split into the rider's mean and the departure from it, and the effect is that of the departure
    /// (Neuhaus and Kalbfleisch 1998, doi:10.2307/3109770). What is fixed in a rider, such as stature, cannot confound it.
    /// </summary>
    WithinRider,

    /// <summary>Within and between riders taken to be one effect: more precise, and confounded by all that makes riders differ.</summary>
    Pooled,
}
