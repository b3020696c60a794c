using System.Numerics;
using System.Runtime.InteropServices;

namespace GaitSeat.Study.Linear;

/// <summary>Inner loops over row-major matrices; a lower triangle is stored with its full rows.</summary>
internal static class Dense
{
    /// <summary>Below this the set-up of wide registers costs more than it saves.</summary>
    private const int ShortLength = 8;

    /// <summary>The j-th unit vector.</summary>
    public static double[] Unit(int j, int count)
    {
        var unit = new double[count];
        unit[j] = 1;
        return unit;
    }

    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        if (a.Length < ShortLength)
        {
            for (var k = 0; k < a.Length; k++) sum += a[k] * b[k];
            return sum;
        }

        var va = MemoryMarshal.Cast<double, Vector<double>>(a);
        var vb = MemoryMarshal.Cast<double, Vector<double>>(b[..a.Length]);
        Vector<double> first = default, second = default;
        var i = 0;
        for (; i + 1 < va.Length; i += 2)
        {
            first += va[i] * vb[i];
            second += va[i + 1] * vb[i + 1];
        }

        if (i < va.Length) first += va[i] * vb[i];
        sum = Vector.Sum(first + second);
        for (var k = va.Length * Vector<double>.Count; k < a.Length; k++) sum += a[k] * b[k];
        return sum;
    }

    /// <summary><paramref name="y"/> += <paramref name="factor"/> · <paramref name="x"/>.</summary>
    public static void AddScaled(Span<double> y, double factor, ReadOnlySpan<double> x)
    {
        if (x.Length < ShortLength)
        {
            for (var k = 0; k < x.Length; k++) y[k] += factor * x[k];
            return;
        }

        var vx = MemoryMarshal.Cast<double, Vector<double>>(x);
        var vy = MemoryMarshal.Cast<double, Vector<double>>(y[..x.Length]);
        var wide = new Vector<double>(factor);
        for (var i = 0; i < vx.Length; i++) vy[i] += wide * vx[i];
        for (var k = vx.Length * Vector<double>.Count; k < x.Length; k++) y[k] += factor * x[k];
    }

    /// <summary>Cholesky factor in place of the lower triangle of an n × n matrix. Returns the sum of the logs of its diagonal; NaN where the matrix is not positive definite.</summary>
    public static double Cholesky(Span<double> a, int n)
    {
        double logs = 0;
        for (var i = 0; i < n; i++)
        {
            var row = a.Slice(i * n, n);
            for (var j = 0; j < i; j++) row[j] = (row[j] - Dot(row[..j], a.Slice(j * n, j))) / a[j * n + j];
            var pivot = row[i] - Dot(row[..i], row[..i]);
            if (!(pivot > 0)) return double.NaN;
            row[i] = Math.Sqrt(pivot);
            logs += Math.Log(row[i]);
        }

        return logs;
    }

    /// <summary>Solves L x = <paramref name="x"/> in place; the same as x' ← x' L⁻ᵀ.</summary>
    public static void SolveLower(ReadOnlySpan<double> l, int n, Span<double> x)
    {
        for (var j = 0; j < n; j++) x[j] = (x[j] - Dot(x[..j], l.Slice(j * n, j))) / l[j * n + j];
    }

    /// <summary>Solves Lᵀ x = <paramref name="x"/> in place.</summary>
    public static void SolveUpper(ReadOnlySpan<double> l, int n, Span<double> x)
    {
        for (var j = n - 1; j >= 0; j--)
        {
            x[j] /= l[j * n + j];
            AddScaled(x[..j], -x[j], l.Slice(j * n, j));
        }
    }
}
