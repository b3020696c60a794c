using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Agreement;

/// <summary>
/// A straight line between two methods that both have errors (Deming 1943; estimates as in Linnet 1990, doi:10.1002/sim.4780091210), standard errors by leaving out one subject at a time
/// (Linnet 1993, Clin Chem 39:424-432).
/// </summary>
/// <param name="Intercept">In the unit of y.</param>
/// <param name="Slope">Units of y per unit of x.</param>
/// <param name="Subjects">How many subjects the errors rest on.</param>
public sealed record DemingRegression(Coefficient Intercept, Coefficient Slope, int Subjects)
{
    /// <param name="pairs">x is the first, y the second value of each pair.</param>
    /// <param name="errorVarianceRatio">Error variance of y over that of x; 1 for methods of equal precision.</param>
    public static DemingRegression Of(IReadOnlyList<MethodPair> pairs, double errorVarianceRatio = 1)
    {
        if (!(errorVarianceRatio > 0) || !double.IsFinite(errorVarianceRatio)) throw new StudyException(StudyProblem.BadData, $"ratio of error variances is {errorVarianceRatio}; above zero is allowed");
        var subjects = pairs.Select(p => p.Subject).Distinct().ToArray();
        if (subjects.Length < 3) throw new StudyException(StudyProblem.TooFewRows, $"{subjects.Length} subjects; three or more are needed for a line with standard errors");
        DataCheck.Finite("values", [.. pairs.SelectMany(p => new[] { p.First, p.Second })]);
        var (intercept, slope) = Line(pairs, errorVarianceRatio);
        var without = subjects.Select(s => Line([.. pairs.Where(p => p.Subject != s)], errorVarianceRatio)).ToArray();
        return new(
            new("intercept", intercept, JackknifeSe([.. without.Select(w => w.Intercept)])),
            new("slope", slope, JackknifeSe([.. without.Select(w => w.Slope)])), subjects.Length);
    }

    private static (double Intercept, double Slope) Line(IReadOnlyList<MethodPair> pairs, double ratio)
    {
        var x = Moments.Of([.. pairs.Select(p => p.First)]);
        var y = Moments.Of([.. pairs.Select(p => p.Second)]);
        var products = pairs.Sum(p => (p.First - x.Mean) * (p.Second - y.Mean));
        if (products == 0) throw new StudyException(StudyProblem.BadData, "the two methods are not correlated; no line can be laid through them");
        var excess = y.SumSquares - ratio * x.SumSquares;
        var slope = (excess + Math.Sqrt(excess * excess + 4 * ratio * products * products)) / (2 * products);
        return (y.Mean - slope * x.Mean, slope);
    }

    private static double JackknifeSe(double[] without)
    {
        var moments = Moments.Of(without);
        return Math.Sqrt((without.Length - 1.0) / without.Length * moments.SumSquares);
    }
}
