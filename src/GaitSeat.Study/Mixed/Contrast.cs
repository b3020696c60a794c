using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed;

/// <summary>A weighted sum of fixed effects, such as the effect of two more centimetres of leather.</summary>
/// <param name="Weights">One weight per fixed effect.</param>
public sealed record Contrast(string Name, double[] Weights)
{
    /// <summary>One fixed effect times a step.</summary>
    public static Contrast Of(IReadOnlyList<DesignColumn> columns, string column, double step = 1)
    {
        if (columns.All(c => c.Name != column))
            throw new StudyException(StudyProblem.BadData, $"no fixed effect '{column}'; there are {string.Join(", ", columns.Select(c => $"'{c.Name}'"))}");
        return new(column, [.. columns.Select(c => c.Name == column ? step : 0)]);
    }
}

/// <summary>How an interval was found.</summary>
public enum IntervalMethod
{
    /// <summary>Estimate ± t × standard error, with Satterthwaite's degrees of freedom.</summary>
    Satterthwaite,

    /// <summary>Paired t test: each rider counts once.</summary>
    PairedT,

    /// <summary>Values that a likelihood-ratio test does not refuse; of the model fitted by maximum likelihood.</summary>
    Profile,

    /// <summary>Percentiles of estimates from data simulated by the fitted model.</summary>
    Bootstrap,
}

/// <summary>An estimate with its interval.</summary>
/// <param name="DegreesOfFreedom">NaN where the method has none.</param>
/// <param name="PValue">Two-sided, against zero; NaN where the method gives none.</param>
public sealed record ContrastEstimate(
    string Name, double Estimate, double StandardError, double DegreesOfFreedom, double PValue, double Low, double High, IntervalMethod Method);
