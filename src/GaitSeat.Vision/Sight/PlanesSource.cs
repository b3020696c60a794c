using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// A frame in planes: brightness bilinear, the colour differences of the nearest pixel, which change slowly anyhow. Lanes are brightness, blue and red difference;
/// they become RGB once a mean is taken, which is the same for less work.
/// </summary>
internal readonly ref struct PlanesSource : ICropSource
{
    private const float Full = 255;
    private const long HalfPx = 1L << (FixedPoint.Bits - 1);
    private readonly ReadOnlySpan<byte> _brightness;
    private readonly ReadOnlySpan<byte> _blue;
    private readonly ReadOnlySpan<byte> _red;
    private readonly int _width;
    private readonly int _height;
    private readonly Vector128<float> _outside;
    private readonly Vector128<float> _perBrightness;
    private readonly Vector128<float> _perBlue;
    private readonly Vector128<float> _perRed;
    private readonly Vector128<float> _offset;

    public PlanesSource(Frame frame, ColourMatrix colours, float outside)
    {
        _brightness = frame.Brightness;
        _blue = frame.BlueDifference;
        _red = frame.RedDifference;
        (_width, _height) = (frame.WidthPx, frame.HeightPx);
        _outside = Vector128.Create(ColourMatrix.Black + (outside * ColourMatrix.BlackToWhite / Full), ColourMatrix.NoColour, ColourMatrix.NoColour, 0);
        // R = Y + 2 (1 - Kr) Cr, B = Y + 2 (1 - Kb) Cb, and Y is the mean of all three by their shares; Y to 0..255, Cb and Cr to -127.5..127.5.
        float blue = 2 * (1 - colours.Blue) * Full / ColourMatrix.ColourSpan, red = 2 * (1 - colours.Red) * Full / ColourMatrix.ColourSpan;
        _perBrightness = Vector128.Create(Full / ColourMatrix.BlackToWhite);
        _perBlue = Vector128.Create(0, -blue * colours.Blue / colours.Green, blue, 0);
        _perRed = Vector128.Create(red, -red * colours.Red / colours.Green, 0, 0);
        _offset = -((_perBrightness * ColourMatrix.Black) + ((_perBlue + _perRed) * ColourMatrix.NoColour));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector128<float> At(long x, long y)
    {
        int x0 = (int)(x >> FixedPoint.Bits), y0 = (int)(y >> FixedPoint.Bits);
        if ((uint)x0 >= (uint)(_width - 1) || (uint)y0 >= (uint)(_height - 1)) return AtEdge(x0, y0, x, y);
        ref var pixel = ref Unsafe.Add(ref MemoryMarshal.GetReference(_brightness), (y0 * _width) + x0);
        float fx = FixedPoint.Fraction(x), fy = FixedPoint.Fraction(y);
        float a = pixel, b = Unsafe.Add(ref pixel, 1), c = Unsafe.Add(ref pixel, _width), d = Unsafe.Add(ref pixel, _width + 1);
        float above = a + ((b - a) * fx), below = c + ((d - c) * fx);
        var colour = (((int)((y + HalfPx) >> FixedPoint.Bits) / 2) * (_width / 2)) + ((int)((x + HalfPx) >> FixedPoint.Bits) / 2);
        return Vector128.Create(
            above + ((below - above) * fy),
            Unsafe.Add(ref MemoryMarshal.GetReference(_blue), colour),
            Unsafe.Add(ref MemoryMarshal.GetReference(_red), colour),
            0);
    }

    public Vector128<float> ToRgb(Vector128<float> mean)
    {
        var rgb = (_perBrightness * mean[0]) + (_perBlue * mean[1]) + (_perRed * mean[2]) + _offset;
        return Vector128.Min(Vector128.Max(rgb, Vector128<float>.Zero), Vector128.Create(Full));
    }

    private Vector128<float> AtEdge(int x0, int y0, long x, long y)
    {
        if (x0 < -1 || y0 < -1 || x0 >= _width || y0 >= _height) return _outside;
        float fx = FixedPoint.Fraction(x), fy = FixedPoint.Fraction(y);
        return Single(x0, y0) * ((1 - fx) * (1 - fy)) + Single(x0 + 1, y0) * (fx * (1 - fy))
            + Single(x0, y0 + 1) * ((1 - fx) * fy) + Single(x0 + 1, y0 + 1) * (fx * fy);
    }

    private Vector128<float> Single(int x, int y)
    {
        if ((uint)x >= (uint)_width || (uint)y >= (uint)_height) return _outside;
        var colour = (y / 2 * (_width / 2)) + (x / 2);
        return Vector128.Create(_brightness[(y * _width) + x], _blue[colour], _red[colour], 0f);
    }
}
