using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Draws the instants of one exposure and averages them into the picture. Its canvases are kept from frame to frame, since new ones would be megabytes.</summary>
internal sealed class Shutter
{
    private readonly Canvas _instant = new();
    private readonly Canvas _sum = new();

    /// <summary>Has every instant drawn over the same picture; where none was drawn on, the picture stays as it is.</summary>
    /// <param name="rgb">The whole picture, packed RGB.</param>
    /// <param name="draw">Draws the instant of a number from 0.</param>
    public void Expose(Patch patch, byte[] rgb, int widthPx, int instants, Action<int, Canvas> draw)
    {
        _sum.Begin(patch, rgb, widthPx);
        for (var i = 0; i < instants; i++)
        {
            _instant.Begin(patch, rgb, widthPx);
            draw(i, _instant);
            _sum.Times = i;
            for (var y = 0; y < patch.Height; y++) Add(y);
        }

        for (var y = 0; y < patch.Height; y++)
        {
            var (from, endExcl) = _sum.Ready(y);
            if (from < endExcl) Store(_sum.Row(y, from, endExcl), 255f / instants, rgb.AsSpan(3 * ((patch.Y + y) * widthPx + patch.X + from), 3 * (endExcl - from)));
        }
    }

    private void Add(int y)
    {
        var (from, endExcl) = _instant.Ready(y);
        var before = _sum.Ready(y);
        (from, endExcl) = (Math.Min(from, before.From), Math.Max(endExcl, before.EndExcl));
        if (from >= endExcl) return;
        var sum = _sum.Row(y, from, endExcl);
        var row = _instant.Row(y, from, endExcl);
        for (var x = 0; x < sum.Length && x < row.Length; x++) sum[x] += row[x];
    }

    private static void Store(ReadOnlySpan<Vector4> sum, float scale, Span<byte> target)
    {
        for (var x = 0; x < sum.Length; x++) RgbPixel.Write(target, 3 * x, Vector4.Clamp(sum[x] * scale, Vector4.Zero, new Vector4(255)) + new Vector4(0.5f));
    }
}
