using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Products of small row-major matrices.</summary>
internal static class SmallMatrix
{
    /// <summary>A L, with L lower-triangular; the result may be A itself, since a column is read only until it is written.</summary>
    public static void TimesLower(ReadOnlySpan<double> a, int rows, ReadOnlySpan<double> l, int width, Span<double> result)
    {
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < width; j++)
            {
                double sum = 0;
                for (var k = j; k < width; k++) sum += a[i * width + k] * l[k * width + j];
                result[i * width + j] = sum;
            }
        }
    }

    /// <summary>L' A, with L lower-triangular, width × width, and A width × columns.</summary>
    public static void LowerTransposeTimes(ReadOnlySpan<double> l, int width, ReadOnlySpan<double> a, int columns, Span<double> result)
    {
        for (var i = 0; i < width; i++)
        {
            for (var j = 0; j < columns; j++)
            {
                double sum = 0;
                for (var k = i; k < width; k++) sum += l[k * width + i] * a[k * columns + j];
                result[i * columns + j] = sum;
            }
        }
    }

    /// <summary>target[.., column0..] -= A B', with A rows × inner and B columns × inner.</summary>
    public static void SubtractOuter(ReadOnlySpan<double> a, ReadOnlySpan<double> b, int rows, int columns, int inner, Span<double> target, int stride, int column0)
    {
        for (var i = 0; i < rows; i++)
        {
            var row = target.Slice(i * stride + column0, columns);
            if (inner == 1) Dense.AddScaled(row, -a[i], b);
            else for (var j = 0; j < columns; j++) row[j] -= Dense.Dot(a.Slice(i * inner, inner), b.Slice(j * inner, inner));
        }
    }

    /// <summary>target -= A A', lower triangle only, with A rows × inner and target rows × rows.</summary>
    public static void SubtractSquare(ReadOnlySpan<double> a, int rows, int inner, Span<double> target)
    {
        for (var i = 0; i < rows; i++)
            for (var j = 0; j <= i; j++) target[i * rows + j] -= Dense.Dot(a.Slice(i * inner, inner), a.Slice(j * inner, inner));
    }
}
