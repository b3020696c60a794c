using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// A symmetric matrix of which each row is kept from its first entry that is not zero to the diagonal. The Cholesky factor fills nothing outside (George and Liu 1981,
/// Computer Solution of Large Sparse Positive Definite Systems, chapter 4), so that riders who hang together only through horses cost next to nothing.
/// </summary>
/// <param name="first">First column of each row.</param>
internal sealed class Envelope(int[] first)
{
    private readonly double[][] _rows = [.. first.Select((f, i) => new double[i - f + 1])];

    public int Size => first.Length;

    /// <summary>The identity.</summary>
    public void Reset()
    {
        foreach (var row in _rows)
        {
            Array.Clear(row);
            row[^1] = 1;
        }
    }

    /// <summary>Adds a block; what stands above the diagonal is left out.</summary>
    public void Add(ReadOnlySpan<double> block, int rows, int columns, int row0, int column0)
    {
        for (var i = 0; i < rows; i++)
        {
            var row = Row(row0 + i, column0);
            var count = Math.Min(columns, row0 + i - column0 + 1);
            for (var j = 0; j < count; j++) row[j] += block[i * columns + j];
        }
    }

    /// <summary>[row0.., column0..] -= A B', with A rows × inner and B columns × inner; what stands above the diagonal is left out.</summary>
    public void SubtractOuter(ReadOnlySpan<double> a, ReadOnlySpan<double> b, int rows, int columns, int inner, int row0, int column0)
    {
        for (var i = 0; i < rows; i++)
        {
            var row = Row(row0 + i, column0);
            var count = Math.Min(columns, row0 + i - column0 + 1);
            if (inner == 1) Dense.AddScaled(row, -a[i], b[..count]);
            else for (var j = 0; j < count; j++) row[j] -= Dense.Dot(a.Slice(i * inner, inner), b.Slice(j * inner, inner));
        }
    }

    /// <summary>Cholesky factor in place; the sum of the logs of its diagonal, NaN where the matrix is not positive definite.</summary>
    public double Factor()
    {
        double logs = 0;
        for (var i = 0; i < _rows.Length; i++)
        {
            var row = _rows[i].AsSpan();
            for (var j = first[i]; j < i; j++)
            {
                var start = Math.Max(first[i], first[j]);
                row[j - first[i]] = (row[j - first[i]] - Dense.Dot(row[(start - first[i])..(j - first[i])], Before(j, start))) / _rows[j][^1];
            }

            var pivot = row[^1] - Dense.Dot(row[..^1], row[..^1]);
            if (!(pivot > 0)) return double.NaN;
            row[^1] = Math.Sqrt(pivot);
            logs += Math.Log(row[^1]);
        }

        return logs;
    }

    /// <summary>Solves L x = <paramref name="x"/> in place.</summary>
    public void SolveLower(Span<double> x)
    {
        for (var j = 0; j < _rows.Length; j++) x[j] = (x[j] - Dense.Dot(x[first[j]..j], Before(j, first[j]))) / _rows[j][^1];
    }

    /// <summary>Solves Lᵀ x = <paramref name="x"/> in place.</summary>
    public void SolveUpper(Span<double> x)
    {
        for (var j = _rows.Length - 1; j >= 0; j--)
        {
            x[j] /= _rows[j][^1];
            Dense.AddScaled(x[first[j]..j], -x[j], Before(j, first[j]));
        }
    }

    private Span<double> Row(int i, int column) => _rows[i].AsSpan(column - first[i]);

    /// <summary>Row j from a column to the diagonal, the diagonal left out.</summary>
    private ReadOnlySpan<double> Before(int j, int start) => _rows[j].AsSpan(start - first[j], j - start);
}
