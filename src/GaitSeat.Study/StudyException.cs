namespace GaitSeat.Study;

/// <summary>Why a study cannot be answered with numbers.</summary>
public enum StudyProblem
{
    /// <summary>Lengths that differ, values that are not finite, weights that are not positive.</summary>
    BadData,

    /// <summary>No rows are left, or too few for the question.</summary>
    TooFewRows,

    /// <summary>A grouping with one level tells nothing about the spread between levels.</summary>
    OneLevel,

    /// <summary>A column is a combination of the others.</summary>
    Collinear,

    /// <summary>The fit stopped before it reached an optimum.</summary>
    NoConvergence,

    /// <summary>More random-effect columns than can be held at once.</summary>
    TooLarge,
}

/// <summary>A study that cannot be answered: what, where and what is allowed stand in the message.</summary>
public sealed class StudyException(StudyProblem problem, string message) : Exception(message)
{
    public StudyProblem Problem { get; } = problem;
}
