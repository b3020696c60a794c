using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Agreement;

/// <summary>Agreement of two raters beyond chance: Cohen (1960), Educ Psychol Meas 20:37-46, doi:10.1177/001316446002000104.</summary>
/// <param name="StandardError">Large-sample error of Fleiss, Cohen and Everitt (1969), Psychol Bull 72:323-327.</param>
public sealed record CohenKappa(double Observed, double Expected, double Value, double StandardError)
{
    public (double Low, double High) Interval(double level = 0.95)
    {
        var half = Normal.InvCDF(0, 1, (1 + level) / 2) * StandardError;
        return (Value - half, Value + half);
    }

    /// <param name="counts">Square table: first rater's categories in rows, second's in columns.</param>
    public static CohenKappa Of(int[,] counts)
    {
        var size = counts.GetLength(0);
        if (counts.GetLength(1) != size || size < 2) throw new ArgumentException($"a table of {size} by {counts.GetLength(1)}; a square one of two categories or more is needed");
        double total = counts.Cast<int>().Sum();
        if (total == 0) throw new StudyException(StudyProblem.TooFewRows, "no ratings");
        var rows = Enumerable.Range(0, size).Select(i => Enumerable.Range(0, size).Sum(j => counts[i, j]) / total).ToArray();
        var columns = Enumerable.Range(0, size).Select(j => Enumerable.Range(0, size).Sum(i => counts[i, j]) / total).ToArray();
        var observed = Enumerable.Range(0, size).Sum(i => counts[i, i]) / total;
        var expected = Enumerable.Range(0, size).Sum(i => rows[i] * columns[i]);
        if (expected >= 1) throw new StudyException(StudyProblem.BadData, "both raters used one and the same category throughout; kappa is not defined");
        var kappa = (observed - expected) / (1 - expected);
        return new(observed, expected, kappa, Math.Sqrt(Variance(counts, rows, columns, total, kappa, expected)));
    }

    private static double Variance(int[,] counts, double[] rows, double[] columns, double total, double kappa, double expected)
    {
        double sum = 0;
        for (var i = 0; i < rows.Length; i++)
        {
            for (var j = 0; j < rows.Length; j++)
            {
                var share = counts[i, j] / total;
                var pull = i == j ? 1 - (rows[i] + columns[i]) * (1 - kappa) : (columns[i] + rows[j]) * (1 - kappa);
                sum += share * pull * pull;
            }
        }

        var middle = kappa - expected * (1 - kappa);
        return (sum - middle * middle) / (total * (1 - expected) * (1 - expected));
    }
}
