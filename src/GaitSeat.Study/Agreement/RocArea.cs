namespace GaitSeat.Study.Agreement;

/// <summary>Area under the ROC curve: Hanley and McNeil (1982), Radiology 143:29-36, doi:10.1148/radiology.143.1.7063747.</summary>
/// <param name="Q1">Chance that two random positives both score above a random negative.</param>
/// <param name="Q2">Chance that a random positive scores above two random negatives.</param>
public sealed record RocArea(double Area, double Q1, double Q2, double StandardError)
{
    /// <summary>From counts per rating, lowest first; ties count half.</summary>
    public static RocArea Of(IReadOnlyList<int> negatives, IReadOnlyList<int> positives)
    {
        if (negatives.Count != positives.Count) throw new ArgumentException($"{negatives.Count} ratings of negatives and {positives.Count} of positives; they must be the same");
        double n = negatives.Sum(), p = positives.Sum();
        if (n == 0 || p == 0) throw new StudyException(StudyProblem.TooFewRows, $"{p} positives and {n} negatives; one or more of each are needed");
        double area = 0, q1 = 0, q2 = 0, below = 0, above = p;
        for (var r = 0; r < negatives.Count; r++)
        {
            double neg = negatives[r], pos = positives[r];
            above -= pos;
            area += neg * (above + pos / 2);
            q1 += neg * (above * above + above * pos + pos * pos / 3);
            q2 += pos * (below * below + below * neg + neg * neg / 3);
            below += neg;
        }

        area /= n * p;
        q1 /= n * p * p;
        q2 /= p * n * n;
        return new(area, q1, q2, Error(area, q1, q2, p, n));
    }

    /// <summary>Error from the area alone, Q1 and Q2 as for exponential scores (their equation 2).</summary>
    public static RocArea FromArea(double area, int positives, int negatives)
    {
        if (!(area is >= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(area), area, "0 to 1 is allowed");
        if (positives < 1 || negatives < 1) throw new StudyException(StudyProblem.TooFewRows, $"{positives} positives and {negatives} negatives; one or more of each are needed");
        var (q1, q2) = (area / (2 - area), 2 * area * area / (1 + area));
        return new(area, q1, q2, Error(area, q1, q2, positives, negatives));
    }

    private static double Error(double a, double q1, double q2, double p, double n) =>
        Math.Sqrt((a * (1 - a) + (p - 1) * (q1 - a * a) + (n - 1) * (q2 - a * a)) / (p * n));
}
