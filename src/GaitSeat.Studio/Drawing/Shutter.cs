using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>The instants of one exposure, each drawn on a canvas of its own and averaged into the picture. Kept from frame to frame, since new canvases would be megabytes.</summary>
internal sealed class Shutter
{
    private readonly List<Canvas> _canvases = [];
    private Vector4[] _sum = [];

    /// <summary>Has every instant drawn over the same picture; where none was drawn on, the picture stays as it is.</summary>
    /// <param name="rgb">The whole picture, packed RGB.</param>
    /// <param name="draw">Draws the instant of a number from 0.</param>
    public void Expose(Patch patch, byte[] rgb, int widthPx, int instants, Action<int, Canvas> draw)
    {
        while (_canvases.Count < instants) _canvases.Add(new Canvas());
        for (var i = 0; i < instants; i++)
        {
            _canvases[i].Begin(patch, rgb, widthPx);
            draw(i, _canvases[i]);
        }

        if (_sum.Length < patch.Width) _sum = new Vector4[patch.Width];
        for (var y = 0; y < patch.Height; y++)
        {
            var (from, endExcl) = Drawn(y, instants);
            if (from < endExcl) Average(y, from, endExcl, instants, rgb.AsSpan(3 * ((patch.Y + y) * widthPx + patch.X + from), 3 * (endExcl - from)));
        }
    }

    private (int From, int EndExcl) Drawn(int y, int instants)
    {
        var (from, endExcl) = _canvases[0].Ready(y);
        for (var i = 1; i < instants; i++)
        {
            var other = _canvases[i].Ready(y);
            (from, endExcl) = (Math.Min(from, other.From), Math.Max(endExcl, other.EndExcl));
        }

        return (from, endExcl);
    }

    private void Average(int y, int from, int endExcl, int instants, Span<byte> target)
    {
        var sum = _sum.AsSpan(0, endExcl - from);
        _canvases[0].Row(y, from, endExcl).CopyTo(sum);
        for (var i = 1; i < instants; i++)
        {
            var row = _canvases[i].Row(y, from, endExcl);
            for (var x = 0; x < sum.Length; x++) sum[x] += row[x];
        }

        var scale = 255f / instants;
        for (var x = 0; x < sum.Length; x++) RgbPixel.Write(target, 3 * x, Vector4.Clamp(sum[x] * scale, Vector4.Zero, new Vector4(255)) + new Vector4(0.5f));
    }
}
