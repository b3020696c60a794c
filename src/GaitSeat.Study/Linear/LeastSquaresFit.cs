using MathNet.Numerics.Distributions;

namespace GaitSeat.Study.Linear;

/// <summary>One coefficient with its standard error, in the unit of the outcome per unit of the column.</summary>
public sealed record Coefficient(string Name, double Estimate, double StandardError);

/// <summary>Ordinary least squares, also where columns are badly scaled or nearly collinear (NIST's Longley to 13 digits).</summary>
public sealed record LeastSquaresFit(
    IReadOnlyList<Coefficient> Coefficients, double[] Residuals, double ResidualSumSquares, int DegreesOfFreedom, double ResidualSd, double RSquared, double F, double PValue)
{
    /// <param name="outcome">One value per row.</param>
    /// <param name="columns">Columns of the design, the intercept first where there is one: R² and F are against the mean then, else against zero.</param>
    /// <exception cref="StudyException">Collinear columns, or no more rows than columns.</exception>
    public static LeastSquaresFit Of(double[] outcome, IReadOnlyList<DesignColumn> columns)
    {
        DataCheck.SameLength(outcome.Length, columns);
        if (outcome.Length <= columns.Count)
            throw new StudyException(StudyProblem.TooFewRows, $"{outcome.Length} rows for {columns.Count} columns; more rows than columns are needed");
        var basis = OrthonormalBasis.Of(columns);
        var residuals = (double[])outcome.Clone();
        var coordinates = basis.TakeOut(residuals);
        var rss = Dense.Dot(residuals, residuals);
        var df = outcome.Length - columns.Count;
        var sd = Math.Sqrt(rss / df);
        var (total, fixedColumns) = Total(outcome, columns);
        var explained = columns.Count - fixedColumns;
        // Of rows that are all alike rounding can leave less than nothing to be explained.
        var f = explained > 0 ? Math.Max(0, total - rss) / explained / (rss / df) : double.NaN;
        return new(
            Named(columns, basis, coordinates, sd), residuals, rss, df, sd, 1 - rss / total, f,
            double.IsFinite(f) ? 1 - FisherSnedecor.CDF(explained, df, f) : double.IsPositiveInfinity(f) ? 0 : double.NaN);
    }

    private static Coefficient[] Named(IReadOnlyList<DesignColumn> columns, OrthonormalBasis basis, double[] coordinates, double sd)
    {
        var estimates = basis.ToColumns(coordinates);
        return [.. columns.Select((c, j) => new Coefficient(c.Name, estimates[j], sd * Norm(basis.ToCoordinates(Dense.Unit(j, columns.Count)))))];
    }

    private static (double SumSquares, int Columns) Total(double[] outcome, IReadOnlyList<DesignColumn> columns)
    {
        if (columns.Count == 0 || columns[0].Values.Any(v => v != 1)) return (Dense.Dot(outcome, outcome), 0);
        return (Moments.Of(outcome).SumSquares, 1);
    }

    private static double Norm(double[] x) => Math.Sqrt(Dense.Dot(x, x));
}
