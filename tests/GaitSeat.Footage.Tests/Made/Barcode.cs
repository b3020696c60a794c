using GaitSeat.Model;

namespace GaitSeat.Footage.Tests;

/// <summary>Pictures that carry their number: eight bars of eight pixels, the lowest bit on the left. So a picture cannot be taken for its neighbour.</summary>
internal static class Barcode
{
    public const int WidthPx = 64;
    public const int HeightPx = 48;
    private const int BarPx = 8;

    /// <summary>FFmpeg input arguments: frame n shows n modulo 256.</summary>
    public static string Source(double rateHz, int frames) =>
        FormattableString.Invariant($"-f lavfi -i color=black:s={WidthPx}x{HeightPx}:r={rateHz},trim=end_frame={frames},format=yuv420p,")
        + $"geq=lum='16+219*mod(floor(N/pow(2,floor(X/{BarPx}))),2)':cb=128:cr=128";

    public static int Read(Frame frame)
    {
        var number = 0;
        for (var bit = 0; bit < frame.WidthPx / BarPx; bit++)
        {
            var pixel = (frame.HeightPx / 2 * frame.WidthPx + bit * BarPx + BarPx / 2) * 3;
            if (frame.Rgb[pixel + 1] > 127) number |= 1 << bit;
        }

        return number;
    }
}
