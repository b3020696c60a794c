using System.Globalization;

namespace GaitSeat.Study.Linear;

/// <summary>
/// X = Q R by modified Gram–Schmidt, every column projected twice ("twice is enough": Giraud, Langou and Rozložník 2005,
/// doi:10.1016/j.camwa.2005.08.009), so that Q is orthonormal to rounding whatever the scale of the columns, at one pass over tall data per pair of columns.
/// </summary>
internal sealed class OrthonormalBasis
{
    /// <summary>A column of which less than this share is left beside the others is a combination of them. Single-precision input is exact to 6e-8.</summary>
    private const double CollinearShare = 1e-7;

    private OrthonormalBasis(double[][] q, double[,] r) => (Q, R) = (q, r);

    public double[][] Q { get; }

    /// <summary>Upper triangle, columns × columns.</summary>
    public double[,] R { get; }

    public int Columns => Q.Length;

    /// <exception cref="StudyException">A column is zero, or a combination of earlier ones, which are named.</exception>
    public static OrthonormalBasis Of(IReadOnlyList<DesignColumn> columns)
    {
        var q = new double[columns.Count][];
        var r = new double[columns.Count, columns.Count];
        for (var j = 0; j < columns.Count; j++)
        {
            q[j] = (double[])columns[j].Values.Clone();
            var before = Math.Sqrt(Dense.Dot(q[j], q[j]));
            for (var pass = 0; pass < 2; pass++)
                for (var i = 0; i < j; i++) r[i, j] += Remove(q[j], q[i]);
            r[j, j] = Math.Sqrt(Dense.Dot(q[j], q[j]));
            if (!(r[j, j] > CollinearShare * before)) throw Collinear(columns, r, j, before);
            for (var k = 0; k < q[j].Length; k++) q[j][k] /= r[j, j];
        }

        return new(q, r);
    }

    /// <summary>Takes the basis out of <paramref name="values"/>, in place, and returns the coordinates.</summary>
    public double[] TakeOut(double[] values)
    {
        var coordinates = new double[Columns];
        for (var pass = 0; pass < 2; pass++)
            for (var i = 0; i < Columns; i++) coordinates[i] += Remove(values, Q[i]);
        return coordinates;
    }

    /// <summary>Coefficients of the columns of X from coordinates in Q: R⁻¹ c.</summary>
    public double[] ToColumns(ReadOnlySpan<double> coordinates)
    {
        var x = coordinates.ToArray();
        for (var j = Columns - 1; j >= 0; j--)
        {
            for (var k = j + 1; k < Columns; k++) x[j] -= R[j, k] * x[k];
            x[j] /= R[j, j];
        }

        return x;
    }

    /// <summary>A contrast on the columns of X as one on the coordinates: R⁻ᵀ c.</summary>
    public double[] ToCoordinates(ReadOnlySpan<double> contrast)
    {
        var x = contrast.ToArray();
        for (var j = 0; j < Columns; j++)
        {
            for (var k = 0; k < j; k++) x[j] -= R[k, j] * x[k];
            x[j] /= R[j, j];
        }

        return x;
    }

    private static double Remove(double[] values, double[] direction)
    {
        var along = Dense.Dot(values, direction);
        Dense.AddScaled(values, -along, direction);
        return along;
    }

    private static StudyException Collinear(IReadOnlyList<DesignColumn> columns, double[,] r, int j, double norm)
    {
        if (!(norm > 0)) return new(StudyProblem.Collinear, $"column '{columns[j].Name}' is zero in every row; leave it out");
        var coefficients = new double[j];
        for (var i = j - 1; i >= 0; i--)
        {
            coefficients[i] = r[i, j];
            for (var k = i + 1; k < j; k++) coefficients[i] -= r[i, k] * coefficients[k];
            coefficients[i] /= r[i, i];
        }

        var parts = Enumerable.Range(0, j)
            .Where(i => Math.Abs(coefficients[i]) * Norm(r, i) > 1e-6 * norm)
            .Select(i => string.Create(CultureInfo.InvariantCulture, $"{coefficients[i]:G4} × '{columns[i].Name}'"));
        return new(StudyProblem.Collinear, $"column '{columns[j].Name}' is a combination of others ({string.Join(" + ", parts)}); leave one of them out");
    }

    private static double Norm(double[,] r, int j) => Math.Sqrt(Enumerable.Range(0, j + 1).Sum(i => r[i, j] * r[i, j]));
}
