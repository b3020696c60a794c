using GaitSeat.Study.Linear;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Agreement;

/// <summary>
/// The six intraclass correlations of Shrout and Fleiss (1979), Psychol Bull 86:420-428, doi:10.1037/0033-2909.86.2.420; in brackets the names of
/// McGraw and Wong (1996), Psychol Methods 1:30-46, doi:10.1037/1082-989X.1.1.30.
/// </summary>
public enum IccForm
{
    /// <summary>ICC(1,1) [ICC(1)]: each target rated by other judges; one judge's rating.</summary>
    OneWaySingle,

    /// <summary>ICC(2,1) [ICC(A,1)]: the judges are a sample; absolute agreement of one judge's rating.</summary>
    AgreementSingle,

    /// <summary>ICC(3,1) [ICC(C,1)]: these judges only; consistency of one judge's rating.</summary>
    ConsistencySingle,

    /// <summary>ICC(1,k) [ICC(k)]: mean of k ratings by other judges.</summary>
    OneWayMean,

    /// <summary>ICC(2,k) [ICC(A,k)]: absolute agreement of the mean of k judges.</summary>
    AgreementMean,

    /// <summary>ICC(3,k) [ICC(C,k)]: consistency of the mean of k judges.</summary>
    ConsistencyMean,
}

/// <summary>An intraclass correlation with its interval.</summary>
public sealed record IccEstimate(IccForm Form, double Value, double Low, double High);

/// <summary>Mean squares of a complete table of targets × judges.</summary>
/// <param name="Within">Within targets.</param>
public sealed record RatingTable(int Targets, int Judges, double BetweenTargets, double Within, double BetweenJudges, double Residual)
{
    /// <param name="ratings">One row per target, one value per judge, none missing.</param>
    public static RatingTable Of(IReadOnlyList<double[]> ratings)
    {
        if (ratings.Count < 2 || ratings[0].Length < 2)
            throw new StudyException(StudyProblem.TooFewRows, $"{ratings.Count} targets and {(ratings.Count > 0 ? ratings[0].Length : 0)} judges; two or more of each are needed");
        if (ratings.Any(r => r.Length != ratings[0].Length)) throw new StudyException(StudyProblem.BadData, "targets with different counts of ratings; the table must be complete, leave targets with missing ratings out");
        foreach (var row in ratings) DataCheck.Finite("rating", row);
        var (n, k) = (ratings.Count, ratings[0].Length);
        var anova = OneWayAnova.Of([.. ratings]);
        var judges = OneWayAnova.Of([.. Enumerable.Range(0, k).Select(j => ratings.Select(r => r[j]).ToArray())]).BetweenSumSquares;
        return new(n, k, anova.BetweenMeanSquare, anova.WithinMeanSquare, judges / (k - 1), (anova.WithinSumSquares - judges) / ((n - 1) * (k - 1)));
    }

    public IccEstimate Icc(IccForm form, double level = 0.95) => IccFormulas.Of(this, form, level);

    /// <summary>Standard error of measurement, in the unit of the ratings: the spread of one rating of an unchanging target. For agreement the judges' own means add to it.</summary>
    public double StandardErrorOfMeasurement(bool agreement) =>
        Math.Sqrt(Residual + (agreement ? Math.Max(0, (BetweenJudges - Residual) / Targets) : 0));

    /// <summary>Smallest change between two ratings that is more than their error, at 95 %: 1.96 √2 SEM (Weir 2005, J Strength Cond Res 19:231-240).</summary>
    public double MinimalDetectableChange95(bool agreement) => Normal.InvCDF(0, 1, 0.975) * Math.Sqrt(2) * StandardErrorOfMeasurement(agreement);
}
