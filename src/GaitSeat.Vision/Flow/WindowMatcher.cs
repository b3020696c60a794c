using System.Numerics;
using System.Runtime.InteropServices;

namespace GaitSeat.Vision.Flow;

/// <summary>
/// Lucas–Kanade for one square window (Lucas and Kanade 1981; gradients taken from the first picture, Baker and Matthews 2004, from memory).
/// A change of brightness common to the window is projected out, so that shading and exposure do not read as motion.
/// </summary>
internal sealed class WindowMatcher
{
    /// <summary>Side of the window, px of its level. 16 is a whole number of vectors on every machine (4, 8 or 16 floats).</summary>
    public const int Side = 16;

    /// <summary>Row length of the sampled patch: the window and one pixel around it, rounded up to whole vectors.</summary>
    public const int PaddedStride = 32;

    private const int Area = Side * Side;
    private const int PaddedSide = Side + 2;

    private readonly float[] _patch = new float[PaddedStride * PaddedSide];
    private readonly float[] _template = new float[Area];
    private readonly float[] _gradientX = new float[Area];
    private readonly float[] _gradientY = new float[Area];

    /// <summary>Sum of squared gradients over the window that was loaded, brightness change projected out.</summary>
    public Tensor Structure { get; private set; }

    /// <summary>Variance of the brightness of the window that was loaded, grey².</summary>
    public double Contrast { get; private set; }

    /// <summary>Takes the window around a place; false where it does not lie inside the picture.</summary>
    public bool Load(GreyPicture picture, double x, double y)
    {
        var (left, top) = (x - (Side / 2) - 1, y - (Side / 2) - 1);
        if (!(left >= 0 && top >= 0 && left + PaddedSide < picture.Width && top + PaddedSide < picture.Height)) return false;
        Bilinear.Sample(picture, left, top, PaddedSide, PaddedStride, _patch);
        TakeGradients();
        Structure = Centre();
        Contrast = Variance();
        return true;
    }

    /// <summary>Moves the place until the window there looks like the one loaded.</summary>
    /// <param name="x">In: where to begin. Out: where it came to rest.</param>
    /// <param name="pull">Stiffness towards the beginning, grey² per px²: it settles the direction in which the window shows nothing.</param>
    /// <param name="noiseVariance">Mean squared brightness difference that remains.</param>
    public bool Settle(GreyPicture picture, ref double x, ref double y, double pull, MatchLimits limits, out double noiseVariance)
    {
        noiseVariance = double.NaN;
        var (fromX, fromY) = (x, y);
        var inverse = Structure.PlusIdentity(pull).Inverse;
        for (var i = 0; i < limits.Iterations; i++)
        {
            if (!Compare(picture, x, y, out var sum)) return false;
            var (stepX, stepY) = inverse.Times(sum.GradientX - (pull * (x - fromX)), sum.GradientY - (pull * (y - fromY)));
            (x, y) = (x + stepX, y + stepY);
            noiseVariance = Math.Max(0, (sum.Squares / Area) - (sum.Differences / Area * (sum.Differences / Area)));
            if ((stepX * stepX) + (stepY * stepY) < limits.SettledPx * limits.SettledPx) break;
        }

        return Math.Abs(x - fromX) <= limits.FarthestPx && Math.Abs(y - fromY) <= limits.FarthestPx;
    }

    private void TakeGradients()
    {
        ref var patch = ref MemoryMarshal.GetArrayDataReference(_patch);
        for (var row = 0; row < Side; row++)
        {
            for (var column = 0; column < Side; column += Vector<float>.Count)
            {
                var centre = ((row + 1) * PaddedStride) + column + 1;
                var to = (row * Side) + column;
                Vector.LoadUnsafe(ref patch, (nuint)centre).CopyTo(_template, to);
                ((Vector.LoadUnsafe(ref patch, (nuint)(centre + 1)) - Vector.LoadUnsafe(ref patch, (nuint)(centre - 1))) * 0.5f).CopyTo(_gradientX, to);
                ((Vector.LoadUnsafe(ref patch, (nuint)(centre + PaddedStride)) - Vector.LoadUnsafe(ref patch, (nuint)(centre - PaddedStride))) * 0.5f).CopyTo(_gradientY, to);
            }
        }
    }

    /// <summary>Takes the mean off both gradients: what is left is blind to a change of brightness.</summary>
    private Tensor Centre()
    {
        var gx = Vectors(_gradientX);
        var gy = Vectors(_gradientY);
        var (sumX, sumY) = (Vector<float>.Zero, Vector<float>.Zero);
        for (var i = 0; i < gx.Length; i++) (sumX, sumY) = (sumX + gx[i], sumY + gy[i]);
        var (meanX, meanY) = (new Vector<float>(Vector.Sum(sumX) / Area), new Vector<float>(Vector.Sum(sumY) / Area));
        var (xx, xy, yy) = (Vector<float>.Zero, Vector<float>.Zero, Vector<float>.Zero);
        for (var i = 0; i < gx.Length; i++)
        {
            var (x, y) = (gx[i] - meanX, gy[i] - meanY);
            (gx[i], gy[i]) = (x, y);
            (xx, xy, yy) = (xx + (x * x), xy + (x * y), yy + (y * y));
        }

        return new(Vector.Sum(xx), Vector.Sum(xy), Vector.Sum(yy));
    }

    private double Variance()
    {
        var (sum, squares) = (Vector<float>.Zero, Vector<float>.Zero);
        foreach (var v in Vectors(_template)) (sum, squares) = (sum + v, squares + (v * v));
        var mean = (double)Vector.Sum(sum) / Area;
        return Math.Max(0, ((double)Vector.Sum(squares) / Area) - (mean * mean));
    }

    private bool Compare(GreyPicture picture, double x, double y, out Sums sums)
    {
        sums = default;
        var (left, top) = (x - (Side / 2), y - (Side / 2));
        if (!(left >= 0 && top >= 0 && left + Side < picture.Width && top + Side < picture.Height)) return false;
        var at = new Bilinear(picture.Width, left, top);
        ref var pixels = ref MemoryMarshal.GetArrayDataReference(picture.Pixels);
        var gx = Vectors(_gradientX);
        var gy = Vectors(_gradientY);
        var template = Vectors(_template);
        var (alongX, alongY) = (Vector<float>.Zero, Vector<float>.Zero);
        var (all, squares) = (Vector<float>.Zero, Vector<float>.Zero);
        for (int row = 0, i = 0; row < Side; row++)
        {
            for (var column = 0; column < Side; column += Vector<float>.Count, i++)
            {
                var difference = template[i] - at.Read(ref pixels, row, column);
                (alongX, alongY) = (alongX + (gx[i] * difference), alongY + (gy[i] * difference));
                (all, squares) = (all + difference, squares + (difference * difference));
            }
        }

        sums = new(Vector.Sum(alongX), Vector.Sum(alongY), Vector.Sum(all), Vector.Sum(squares));
        return true;
    }

    private static Span<Vector<float>> Vectors(float[] values) => MemoryMarshal.Cast<float, Vector<float>>(values.AsSpan());

    private readonly record struct Sums(double GradientX, double GradientY, double Differences, double Squares);
}
