using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>A frame in RGB, bilinear. Channels lie in lanes 0, 1, 2; lane 3 carries a neighbour's byte.</summary>
internal readonly ref struct RgbSource(Frame frame, float outside) : ICropSource
{
    private readonly ReadOnlySpan<byte> _rgb = frame.Rgb;
    private readonly int _width = frame.WidthPx;
    private readonly int _height = frame.HeightPx;
    private readonly Vector128<float> _outside = Vector128.Create(outside);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector128<float> At(long x, long y)
    {
        int x0 = (int)(x >> FixedPoint.Bits), y0 = (int)(y >> FixedPoint.Bits);
        // The last two rows go the slow way: an eight-byte read of two pixels would pass the end.
        if ((uint)x0 >= (uint)(_width - 1) || (uint)y0 >= (uint)(_height - 2)) return AtEdge(x0, y0, FixedPoint.Fraction(x), FixedPoint.Fraction(y));
        Vector128<float> fx = Vector128.Create(FixedPoint.Fraction(x)), fy = Vector128.Create(FixedPoint.Fraction(y));
        ref var pixel = ref Unsafe.Add(ref MemoryMarshal.GetReference(_rgb), (y0 * _width + x0) * 3);
        var high = Mix(Unsafe.ReadUnaligned<ulong>(ref pixel), fx);
        return high + (Mix(Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref pixel, 3 * _width)), fx) - high) * fy;
    }

    public Vector128<float> ToRgb(Vector128<float> mean) => mean;

    // Two neighbours, R G B R G B from the low byte up.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<float> Mix(ulong pair, Vector128<float> share)
    {
        Vector128<float> a = Widen((uint)pair), b = Widen((uint)(pair >> 24));
        return a + (b - a) * share;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<float> Widen(uint bytes) =>
        Vector128.ConvertToSingle(Vector128.WidenLower(Vector128.WidenLower(Vector128.CreateScalarUnsafe(bytes).AsByte())).AsInt32());

    private Vector128<float> AtEdge(int x0, int y0, float fx, float fy)
    {
        if (x0 < -1 || y0 < -1 || x0 >= _width || y0 >= _height) return _outside;
        return Single(x0, y0) * ((1 - fx) * (1 - fy)) + Single(x0 + 1, y0) * (fx * (1 - fy))
            + Single(x0, y0 + 1) * ((1 - fx) * fy) + Single(x0 + 1, y0 + 1) * (fx * fy);
    }

    private Vector128<float> Single(int x, int y)
    {
        if ((uint)x >= (uint)_width || (uint)y >= (uint)_height) return _outside;
        var at = (y * _width + x) * 3;
        return Vector128.Create(_rgb[at], _rgb[at + 1], _rgb[at + 2], 0f);
    }
}
