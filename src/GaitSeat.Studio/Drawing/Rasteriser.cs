using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>A corner of a triangle in the picture.</summary>
/// <param name="Nearness">Picture scale there, px per m: the greater, the nearer.</param>
/// <param name="PartX">Place on the part, for its colour.</param>
/// <param name="Light">How brightly it is lit.</param>
internal readonly record struct Corner(float X, float Y, float Nearness, float PartX, float PartY, float Light);

/// <summary>Fills triangles; per pixel the nearest one stays.</summary>
internal sealed class Rasteriser
{
    private readonly Canvas _canvas;
    private readonly float[] _nearest;
    private readonly int _turning;

    /// <param name="turning">1 where the outer side of a triangle shows when its corners run clockwise in the picture, -1 where they run the other way.</param>
    public Rasteriser(Canvas canvas, int turning)
    {
        _turning = turning;
        (_canvas, _nearest) = (canvas, canvas.Nearness());
        _nearest.AsSpan(0, canvas.Width * canvas.Height).Clear();
    }

    public void Fill(in Corner a, in Corner b, in Corner c, Solid.Paint paint)
    {
        var area = (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
        if (area * _turning < 1e-6f) return;
        var (x0, x1) = (Math.Max(0, (int)(Min(a.X, b.X, c.X) - _canvas.X)), Math.Min(_canvas.Width - 1, (int)(Max(a.X, b.X, c.X) - _canvas.X)));
        var (y0, y1) = (Math.Max(0, (int)(Min(a.Y, b.Y, c.Y) - _canvas.Y)), Math.Min(_canvas.Height - 1, (int)(Max(a.Y, b.Y, c.Y) - _canvas.Y)));
        // Shares of corners b and c at a pixel; they grow evenly along a row.
        var (bStep, cStep) = ((c.Y - a.Y) / area, -(b.Y - a.Y) / area);
        for (var y = y0; y <= y1; y++)
        {
            var (dx, dy) = (_canvas.X + x0 + 0.5f - a.X, _canvas.Y + y + 0.5f - a.Y);
            var shareB = (dx * (c.Y - a.Y) - dy * (c.X - a.X)) / area;
            var shareC = ((b.X - a.X) * dy - (b.Y - a.Y) * dx) / area;
            var row = _canvas.Row(y);
            for (var x = x0; x <= x1; x++, shareB += bStep, shareC += cStep)
            {
                if (shareB < 0 || shareC < 0 || shareB + shareC > 1) continue;
                var nearness = a.Nearness + shareB * (b.Nearness - a.Nearness) + shareC * (c.Nearness - a.Nearness);
                ref var nearest = ref _nearest[y * _canvas.Width + x];
                if (nearness <= nearest) continue;
                nearest = nearness;
                var light = a.Light + shareB * (b.Light - a.Light) + shareC * (c.Light - a.Light);
                var colour = paint.At(a.PartX + shareB * (b.PartX - a.PartX) + shareC * (c.PartX - a.PartX), a.PartY + shareB * (b.PartY - a.PartY) + shareC * (c.PartY - a.PartY));
                row[x] = new Vector4(colour * light, 1);
            }
        }
    }

    private static float Min(float a, float b, float c) => MathF.Min(a, MathF.Min(b, c));

    private static float Max(float a, float b, float c) => MathF.Max(a, MathF.Max(b, c));
}
