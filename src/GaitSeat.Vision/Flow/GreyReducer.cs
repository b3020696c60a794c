using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>Colour to brightness, reduced by a whole factor (mean over a square block); columns and rows that fill no block are left out.</summary>
internal sealed class GreyReducer
{
    // ITU-R BT.601 luma in 1/256ths: 0.299, 0.587, 0.114.
    private const int Red = 77;
    private const int Green = 150;
    private const int Blue = 29;

    private readonly int[] _sums;

    public GreyReducer(int widthPx, int heightPx, int largestWidthPx)
    {
        Factor = (widthPx + largestWidthPx - 1) / largestWidthPx;
        Width = Math.Max(1, widthPx / Factor);
        Height = Math.Max(1, heightPx / Factor);
        _sums = new int[Width];
    }

    public int Factor { get; }

    public int Width { get; }

    public int Height { get; }

    public void Reduce(Frame frame, GreyPicture into)
    {
        var scale = 1f / (256 * Factor * Factor);
        var stride = frame.WidthPx * 3;
        for (var y = 0; y < Height; y++)
        {
            Array.Clear(_sums);
            for (var k = 0; k < Factor; k++) AddRow(frame.Rgb.Slice(((y * Factor) + k) * stride, stride));
            var row = into.Row(y);
            for (var x = 0; x < row.Length; x++) row[x] = _sums[x] * scale;
        }
    }

    private void AddRow(ReadOnlySpan<byte> rgb)
    {
        var at = 0;
        for (var x = 0; x < _sums.Length; x++)
        {
            for (var k = 0; k < Factor; k++, at += 3)
            {
                _sums[x] += (Red * rgb[at]) + (Green * rgb[at + 1]) + (Blue * rgb[at + 2]);
            }
        }
    }
}
