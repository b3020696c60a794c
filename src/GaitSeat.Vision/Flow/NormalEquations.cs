namespace GaitSeat.Vision.Flow;

/// <summary>Weighted least squares of a motion field in six unknowns, solved by Cholesky.</summary>
internal sealed class NormalEquations
{
    private const int N = 6;

    private readonly double[] _matrix = new double[N * N];
    private readonly double[] _right = new double[N];
    private readonly double[] _rowX = new double[N];
    private readonly double[] _rowY = new double[N];
    private readonly double[] _best = new double[N];
    private readonly double[] _columnX = new double[N];
    private readonly double[] _columnY = new double[N];

    /// <summary>Begins anew with what is believed beforehand. The shift is free (but for a trace that keeps the matrix whole).</summary>
    public void Begin(in FitSettings settings)
    {
        Array.Clear(_matrix);
        Array.Clear(_right);
        ReadOnlySpan<double> spreads = [1e4, 1e4, settings.GrowthSpread, settings.TurnSpread, Math.Max(settings.BendSpread, 1e-6), Math.Max(settings.BendSpread, 1e-6)];
        for (var i = 0; i < N; i++) _matrix[(i * N) + i] = 1 / (spreads[i] * spreads[i]);
    }

    /// <param name="x">Place from the centre, in units of length.</param>
    public void Add(double x, double y, in FlowPoint point, double weight)
    {
        FillRows(x, y);
        var (xx, xy, yy) = (weight * point.Information.Xx, weight * point.Information.Xy, weight * point.Information.Yy);
        for (var i = 0; i < N; i++)
        {
            var fromX = (_rowX[i] * xx) + (_rowY[i] * xy);
            var fromY = (_rowX[i] * xy) + (_rowY[i] * yy);
            _right[i] += (fromX * point.Dx) + (fromY * point.Dy);
            for (var j = 0; j <= i; j++) _matrix[(i * N) + j] += (fromX * _rowX[j]) + (fromY * _rowY[j]);
        }
    }

    /// <summary>The best coefficients and the covariance of the shift.</summary>
    public (MotionCoefficients Best, Tensor ShiftCovariance) Solve()
    {
        Factor();
        _right.CopyTo(_best, 0);
        Substitute(_best);
        SubstituteUnit(_columnX, 0);
        SubstituteUnit(_columnY, 1);
        return (new(_best[0], _best[1], _best[2], _best[3], _best[4], _best[5]), new(_columnX[0], _columnX[1], _columnY[1]));
    }

    /// <summary>A column of the inverse.</summary>
    private void SubstituteUnit(double[] column, int at)
    {
        Array.Clear(column);
        column[at] = 1;
        Substitute(column);
    }

    private void FillRows(double x, double y)
    {
        (_rowX[0], _rowX[1], _rowX[2], _rowX[3], _rowX[4], _rowX[5]) = (1, 0, x, -y, x * x, x * y);
        (_rowY[0], _rowY[1], _rowY[2], _rowY[3], _rowY[4], _rowY[5]) = (0, 1, y, x, x * y, y * y);
    }

    private void Factor()
    {
        for (var i = 0; i < N; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = _matrix[(i * N) + j];
                for (var k = 0; k < j; k++) sum -= _matrix[(i * N) + k] * _matrix[(j * N) + k];
                _matrix[(i * N) + j] = i == j ? Math.Sqrt(sum) : sum / _matrix[(j * N) + j];
            }
        }
    }

    private void Substitute(double[] v)
    {
        for (var i = 0; i < N; i++)
        {
            for (var k = 0; k < i; k++) v[i] -= _matrix[(i * N) + k] * v[k];
            v[i] /= _matrix[(i * N) + i];
        }

        for (var i = N - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < N; k++) v[i] -= _matrix[(k * N) + i] * v[k];
            v[i] /= _matrix[(i * N) + i];
        }
    }
}
