using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace GaitSeat.Vision.Flow;

/// <summary>Reads a picture between its pixels, whole vectors at a time; the share of each neighbour is the same for a whole window.</summary>
internal readonly struct Bilinear
{
    private readonly int _origin;
    private readonly int _stride;
    private readonly float _upperLeft;
    private readonly float _upperRight;
    private readonly float _lowerLeft;
    private readonly float _lowerRight;

    /// <param name="left">Left edge of the window, where pixel (0,0) covers 0..1; at least 0.</param>
    public Bilinear(int stride, double left, double top)
    {
        var (x, y) = ((int)left, (int)top);
        var (shareX, shareY) = ((float)(left - x), (float)(top - y));
        _origin = (y * stride) + x;
        _stride = stride;
        _upperLeft = (1 - shareX) * (1 - shareY);
        _upperRight = shareX * (1 - shareY);
        _lowerLeft = (1 - shareX) * shareY;
        _lowerRight = shareX * shareY;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector<float> Read(ref float pixels, int row, int column)
    {
        var upper = (nuint)(_origin + (row * _stride) + column);
        var lower = upper + (nuint)_stride;
        return (Vector.LoadUnsafe(ref pixels, upper) * _upperLeft) + (Vector.LoadUnsafe(ref pixels, upper + 1) * _upperRight)
            + (Vector.LoadUnsafe(ref pixels, lower) * _lowerLeft) + (Vector.LoadUnsafe(ref pixels, lower + 1) * _lowerRight);
    }

    /// <summary>A patch of <paramref name="rows"/> rows, each <paramref name="patchStride"/> long (a whole number of vectors).</summary>
    public static void Sample(GreyPicture picture, double left, double top, int rows, int patchStride, Span<float> patch)
    {
        var at = new Bilinear(picture.Width, left, top);
        ref var pixels = ref MemoryMarshal.GetArrayDataReference(picture.Pixels);
        var to = MemoryMarshal.Cast<float, Vector<float>>(patch);
        var perRow = patchStride / Vector<float>.Count;
        for (var row = 0; row < rows; row++)
        {
            for (var i = 0; i < perRow; i++) to[(row * perRow) + i] = at.Read(ref pixels, row, i * Vector<float>.Count);
        }
    }
}
