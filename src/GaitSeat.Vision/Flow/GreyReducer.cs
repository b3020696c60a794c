using System.Numerics;
using System.Runtime.InteropServices;
using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>Colour to brightness, reduced by a whole factor (mean over a square block); columns and rows that fill no block are left out.</summary>
internal sealed class GreyReducer
{
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
        var scale = 1f / (Luma.Whole * Factor * Factor);
        var stride = frame.WidthPx * 3;
        for (var y = 0; y < Height; y++)
        {
            Array.Clear(_sums);
            for (var k = 0; k < Factor; k++) AddRow(frame.Rgb.Slice(((y * Factor) + k) * stride, stride));
            var row = into.Row(y);
            var sums = MemoryMarshal.Cast<int, Vector<int>>(_sums.AsSpan());
            var vectors = MemoryMarshal.Cast<float, Vector<float>>(row);
            for (var i = 0; i < vectors.Length; i++) vectors[i] = Vector.ConvertToSingle(sums[i]) * scale;
            for (var x = vectors.Length * Vector<float>.Count; x < row.Length; x++) row[x] = _sums[x] * scale;
        }
    }

    private void AddRow(ReadOnlySpan<byte> rgb)
    {
        if (Factor == 1)
        {
            Luma.Of(rgb, _sums);
            return;
        }

        var at = 0;
        for (var x = 0; x < _sums.Length; x++)
        {
            for (var k = 0; k < Factor; k++, at += 3) _sums[x] += Luma.Of(rgb[at], rgb[at + 1], rgb[at + 2]);
        }
    }
}
