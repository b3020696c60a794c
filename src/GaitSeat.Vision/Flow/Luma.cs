using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace GaitSeat.Vision.Flow;

/// <summary>Brightness of colours: ITU-R BT.601 luma in 1/256ths (0.299, 0.587, 0.114).</summary>
internal static class Luma
{
    /// <summary>Luma of a colour of 1.</summary>
    public const int Whole = 256;

    private const int Red = 77;
    private const int Green = 150;
    private const int Blue = 29;

    // Four pixels of three bytes go into four lanes of 32 bits: R, G, B, nothing.
    private const int Together = 4;

    public static int Of(byte red, byte green, byte blue) => (Red * red) + (Green * green) + (Blue * blue);

    /// <summary>A row of bytes as whole numbers.</summary>
    public static void Widen(ReadOnlySpan<byte> brightness, Span<int> values)
    {
        var x = 0;
        for (; x <= brightness.Length - Vector128<byte>.Count; x += Vector128<byte>.Count)
        {
            var (low, high) = Vector128.Widen(Vector128.Create(brightness[x..]));
            var (first, second) = Vector128.Widen(low);
            var (third, fourth) = Vector128.Widen(high);
            first.AsInt32().CopyTo(values[x..]);
            second.AsInt32().CopyTo(values[(x + Vector128<int>.Count)..]);
            third.AsInt32().CopyTo(values[(x + (2 * Vector128<int>.Count))..]);
            fourth.AsInt32().CopyTo(values[(x + (3 * Vector128<int>.Count))..]);
        }

        for (; x < brightness.Length; x++) values[x] = brightness[x];
    }

    /// <summary>Luma of a row of R, G, B bytes.</summary>
    public static void Of(ReadOnlySpan<byte> rgb, Span<int> luma)
    {
        ref var bytes = ref MemoryMarshal.GetReference(rgb);
        ref var to = ref MemoryMarshal.GetReference(luma);
        var x = 0;
        // A load takes sixteen bytes, of which twelve are used.
        for (; (3 * x) + Vector128<byte>.Count <= rgb.Length && x + Together <= luma.Length; x += Together)
        {
            var pixels = Vector128.LoadUnsafe(ref bytes, (nuint)(3 * x));
            var red = Vector128.Shuffle(pixels, Vector128.Create((byte)0, 255, 255, 255, 3, 255, 255, 255, 6, 255, 255, 255, 9, 255, 255, 255)).AsInt32();
            var green = Vector128.Shuffle(pixels, Vector128.Create((byte)1, 255, 255, 255, 4, 255, 255, 255, 7, 255, 255, 255, 10, 255, 255, 255)).AsInt32();
            var blue = Vector128.Shuffle(pixels, Vector128.Create((byte)2, 255, 255, 255, 5, 255, 255, 255, 8, 255, 255, 255, 11, 255, 255, 255)).AsInt32();
            ((red * Red) + (green * Green) + (blue * Blue)).StoreUnsafe(ref to, (nuint)x);
        }

        for (; x < luma.Length; x++) luma[x] = Of(rgb[3 * x], rgb[(3 * x) + 1], rgb[(3 * x) + 2]);
    }
}
