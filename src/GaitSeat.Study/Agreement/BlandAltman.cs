using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Agreement;

/// <summary>A pair of values of the same thing by two methods.</summary>
/// <param name="Subject">Who or what was measured; pairs of one subject are not independent.</param>
public readonly record struct MethodPair(string Subject, double First, double Second)
{
    public double Difference => First - Second;

    public double Mean => (First + Second) / 2;
}

/// <summary>Limits of agreement of two methods, in the unit of the values.</summary>
/// <param name="Bias">Mean difference, first less second.</param>
/// <param name="Sd">Standard deviation of a difference.</param>
/// <param name="BetweenSubjectSd">The part of <paramref name="Sd"/> that goes with the subject; 0 where there is one pair per subject.</param>
/// <param name="BiasSe">Standard error of the bias.</param>
/// <param name="LimitSe">Standard error of each limit.</param>
/// <param name="Slope">Slope of the difference against the mean: off zero, agreement depends on size and one pair of limits does not do.</param>
public sealed record AgreementLimits(int Subjects, int Pairs, double Bias, double Sd, double BetweenSubjectSd, double BiasSe, double Lower, double Upper, double LimitSe, Coefficient Slope);

/// <summary>
/// Limits of agreement: Bland and Altman (1986), Lancet 327:307-310, doi:10.1016/S0140-6736(86)90837-8; with several pairs per subject
/// Bland and Altman (2007), J Biopharm Stat 17:571-582, doi:10.1080/10543400701329422, the true value allowed to vary (section 3).
/// </summary>
public static class BlandAltman
{
    /// <param name="spread">Standard deviations from the bias to a limit: 1.96 for 95 %; 2 in the paper of 1986.</param>
    public static AgreementLimits Of(IReadOnlyList<MethodPair> pairs, double spread = 1.959963984540054)
    {
        var bySubject = pairs.GroupBy(p => p.Subject).Select(g => g.Select(p => p.Difference).ToArray()).ToArray();
        if (bySubject.Length < 3) throw new StudyException(StudyProblem.TooFewRows, $"{bySubject.Length} subjects; three or more are needed for limits of agreement");
        DataCheck.Finite("difference", [.. pairs.Select(p => p.Difference)]);
        var repeated = pairs.Count > bySubject.Length;
        var all = Moments.Of([.. pairs.Select(p => p.Difference)]);
        var (between, within) = repeated ? Components(bySubject, pairs.Count) : (0, all.Variance);
        var variance = between + within;
        var biasVariance = repeated ? bySubject.Sum(g => g.Length * g.Length * between + g.Length * within) / ((double)pairs.Count * pairs.Count) : all.Variance / pairs.Count;
        var limitVariance = biasVariance + spread * spread * VarianceOfSd(bySubject, between, within, pairs.Count);
        var sd = Math.Sqrt(variance);
        return new(
            bySubject.Length, pairs.Count, all.Mean, sd, Math.Sqrt(between), Math.Sqrt(biasVariance),
            all.Mean - spread * sd, all.Mean + spread * sd, Math.Sqrt(limitVariance), Trend(pairs));
    }

    /// <summary>Repeatability of one method from two readings per subject: 2 × the standard deviation of their differences about zero (1986, p. 309).</summary>
    public static double Repeatability(IReadOnlyList<(double First, double Second)> readings)
    {
        if (readings.Count == 0) throw new StudyException(StudyProblem.TooFewRows, "no pairs of readings");
        return 2 * Math.Sqrt(readings.Average(r => (r.First - r.Second) * (r.First - r.Second)));
    }

    /// <summary>Confidence interval of a limit or the bias, t on one less than the subjects.</summary>
    public static (double Low, double High) Interval(double value, double standardError, int subjects, double level = 0.95)
    {
        var half = standardError * StudentQuantile.TwoSided(subjects - 1, level);
        return (value - half, value + half);
    }

    /// <summary>Between and within variance by one-way analysis of variance with unequal group sizes (2007, section 3).</summary>
    private static (double Between, double Within) Components(double[][] groups, int pairs)
    {
        var anova = OneWayAnova.Of(groups);
        var size = Size(groups, pairs);
        return (Math.Max(0, (anova.BetweenMeanSquare - anova.WithinMeanSquare) / size), anova.WithinMeanSquare);
    }

    private static double Size(double[][] groups, int pairs) => (pairs - groups.Sum(g => (double)g.Length * g.Length) / pairs) / (groups.Length - 1);

    /// <summary>Delta method: the variance of a difference is a sum of two mean squares, each with variance 2 MS² / df.</summary>
    private static double VarianceOfSd(double[][] groups, double between, double within, int pairs)
    {
        if (pairs == groups.Length) return within / (2 * (pairs - 1));
        var size = Size(groups, pairs);
        var meanSquare = within + size * between;
        var variance = 2 * meanSquare * meanSquare / (groups.Length - 1) / (size * size)
            + 2 * within * within / (pairs - groups.Length) * (1 - 1 / size) * (1 - 1 / size);
        return variance / (4 * (between + within));
    }

    private static Coefficient Trend(IReadOnlyList<MethodPair> pairs)
    {
        double[] means = [.. pairs.Select(p => p.Mean)];
        if (means.All(m => m == means[0])) return new("mean", double.NaN, double.NaN);
        return LeastSquaresFit.Of([.. pairs.Select(p => p.Difference)], [DesignColumn.Intercept(pairs.Count), new("mean", means)]).Coefficients[1];
    }
}
