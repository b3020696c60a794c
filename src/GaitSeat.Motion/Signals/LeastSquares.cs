namespace GaitSeat.Motion.Signals;

/// <summary>Small linear least squares by normal equations and Cholesky: a handful of unknowns, well-scaled columns.</summary>
internal sealed class LeastSquares(int unknowns)
{
    private readonly double[,] _normal = new double[unknowns, unknowns];
    private readonly double[] _right = new double[unknowns];
    private double _sumSquares;

    public int Count { get; private set; }

    public void Add(ReadOnlySpan<double> row, double value)
    {
        for (var i = 0; i < unknowns; i++)
        {
            _right[i] += row[i] * value;
            for (var j = 0; j <= i; j++) _normal[i, j] += row[i] * row[j];
        }

        _sumSquares += value * value;
        Count++;
    }

    /// <summary>The unknowns, and the sum of squared residuals; null where the rows do not fix them.</summary>
    public (double[] Solution, double ResidualSumSquares)? Solve()
    {
        if (Count < unknowns) return null;
        var l = new double[unknowns, unknowns];
        for (var i = 0; i < unknowns; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = _normal[i, j];
                for (var k = 0; k < j; k++) sum -= l[i, k] * l[j, k];
                if (i != j) l[i, j] = sum / l[j, j];
                else if (sum <= 1e-10 * _normal[i, i] || !double.IsFinite(sum)) return null;
                else l[i, i] = Math.Sqrt(sum);
            }
        }

        var y = new double[unknowns];
        double explained = 0;
        for (var i = 0; i < unknowns; i++)
        {
            y[i] = _right[i];
            for (var k = 0; k < i; k++) y[i] -= l[i, k] * y[k];
            y[i] /= l[i, i];
            explained += y[i] * y[i];
        }

        for (var i = unknowns - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < unknowns; k++) y[i] -= l[k, i] * y[k];
            y[i] /= l[i, i];
        }

        return (y, Math.Max(0, _sumSquares - explained));
    }
}
