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
        var (whole, black) = frame.Colours is null ? (Luma.Whole, 0) : (ColourMatrix.BlackToWhite / byte.MaxValue, ColourMatrix.Black);
        var scale = 1 / (whole * Factor * Factor);
        var offset = -black / whole;
        for (var y = 0; y < Height; y++)
        {
            Array.Clear(_sums);
            for (var k = 0; k < Factor; k++) AddRow(frame, (y * Factor) + k);
            var row = into.Row(y);
            var sums = MemoryMarshal.Cast<int, Vector<int>>(_sums.AsSpan());
            var vectors = MemoryMarshal.Cast<float, Vector<float>>(row);
            for (var i = 0; i < vectors.Length; i++) vectors[i] = (Vector.ConvertToSingle(sums[i]) * scale) + new Vector<float>(offset);
            for (var x = vectors.Length * Vector<float>.Count; x < row.Length; x++) row[x] = (_sums[x] * scale) + offset;
        }
    }

    private void AddRow(Frame frame, int y)
    {
        if (frame.Colours is null) AddRgb(frame.Rgb.Slice(y * frame.WidthPx * 3, frame.WidthPx * 3));
        else AddBrightness(frame.Brightness.Slice(y * frame.WidthPx, frame.WidthPx));
    }

    private void AddRgb(ReadOnlySpan<byte> rgb)
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

    private void AddBrightness(ReadOnlySpan<byte> brightness)
    {
        if (Factor == 1)
        {
            Luma.Widen(brightness, _sums);
            return;
        }

        var at = 0;
        for (var x = 0; x < _sums.Length; x++)
        {
            for (var k = 0; k < Factor; k++, at++) _sums[x] += brightness[at];
        }
    }
}
