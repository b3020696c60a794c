namespace GaitSeat.Study.Mixed.Solving;

/// <summary>A = L L' for a matrix that may have lost rank, by Cholesky with pivoting: size × rank, in the order of the rows.</summary>
internal sealed record SemiCholesky(double[] Root, int Size, int Rank)
{
    /// <summary>A pivot below this share of the column's own square is rounding.</summary>
    private const double RankShare = 1e-10;

    /// <param name="a">Row-major with rows of <paramref name="stride"/>; the lower triangle of the first <paramref name="size"/> rows is read.</param>
    public static SemiCholesky Of(double[] a, int stride, int size)
    {
        var root = new double[size * size];
        var left = Enumerable.Range(0, size).Select(i => a[i * stride + i]).ToArray();
        var rank = 0;
        for (; rank < size; rank++)
        {
            var pivot = Enumerable.Range(0, size).MaxBy(i => Share(a, stride, left, i));
            if (!(Share(a, stride, left, pivot) > RankShare)) break;
            var length = Math.Sqrt(left[pivot]);
            for (var i = 0; i < size; i++)
            {
                var value = i >= pivot ? a[i * stride + pivot] : a[pivot * stride + i];
                for (var k = 0; k < rank; k++) value -= root[i * size + k] * root[pivot * size + k];
                root[i * size + rank] = value / length;
            }

            for (var i = 0; i < size; i++) left[i] -= root[i * size + rank] * root[i * size + rank];
            left[pivot] = 0;
        }

        return new(root, size, rank);
    }

    /// <summary>L z.</summary>
    public double[] Times(double[] z)
    {
        var result = new double[Size];
        for (var i = 0; i < Size; i++)
            for (var k = 0; k < Rank; k++) result[i] += Root[i * Size + k] * z[k];
        return result;
    }

    private static double Share(double[] a, int stride, double[] left, int i) => a[i * stride + i] > 0 ? left[i] / a[i * stride + i] : 0;
}
