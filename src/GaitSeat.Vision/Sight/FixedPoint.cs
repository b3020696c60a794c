namespace GaitSeat.Vision.Sight;

/// <summary>
/// Places between pixels in 32.32 fixed point: no rounding instruction in the inner loop of a crop, and 4096 steps of 2^-33 px error stay far below a thousandth.
/// </summary>
internal static class FixedPoint
{
    public const int Bits = 32;

    public static long Of(double px) => (long)Math.Round(px * (1L << Bits));

    /// <summary>How far past the pixel before it, 0..1.</summary>
    public static float Fraction(long x) => (int)((uint)x >> 8) * (1f / (1 << 24));
}
