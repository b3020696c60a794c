using System.Numerics;
using System.Runtime.Intrinsics;

namespace GaitSeat.Studio;

/// <summary>A corner of a triangle in the picture.</summary>
/// <param name="Carried">What runs evenly between the corners, see <see cref="Fragment"/>.</param>
internal readonly record struct Corner(float X, float Y, Vector4 Carried);

/// <summary>What is nearest to the camera in a pixel.</summary>
/// <param name="Carried">X: picture scale, px per m (the greater, the nearer; 0 where there is nothing). Y: how brightly it is lit. Z, W: place on the part, for its colour.</param>
/// <param name="Paint">Which paint of the <see cref="Rasteriser"/> the part has.</param>
internal record struct Fragment(Vector4 Carried, int Paint);

/// <summary>Fills triangles; per pixel the nearest one stays, and only what stays is coloured in the end.</summary>
internal sealed class Rasteriser
{
    private static readonly int Lanes = Vector256<int>.Count;
    private readonly List<Solid.Paint> _paints = [];
    private readonly int[] _first = new int[Lanes];
    private readonly int[] _last = new int[Lanes];
    private readonly float[] _shareB = new float[Lanes];
    private readonly float[] _shareC = new float[Lanes];
    private readonly Canvas _canvas;
    private readonly ClearedRows<Fragment> _fragments;
    private readonly int _turning;

    /// <param name="turning">1 where the outer side of a triangle shows when its corners run clockwise in the picture, -1 where they run the other way.</param>
    public Rasteriser(Canvas canvas, int turning)
    {
        (_canvas, _fragments, _turning) = (canvas, canvas.Fragments, turning);
        _fragments.Clear(canvas.Width, canvas.Height);
    }

    /// <summary>The triangles that follow have this paint.</summary>
    public void Take(Solid.Paint paint) => _paints.Add(paint);

    public void Fill(in Corner a, in Corner b, in Corner c)
    {
        var area = (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
        if (area * _turning < 1e-6f) return;
        var (x0, x1) = (Math.Max(0, (int)(Min(a.X, b.X, c.X) - _canvas.X)), Math.Min(_canvas.Width - 1, (int)(Max(a.X, b.X, c.X) - _canvas.X)));
        var (y0, y1) = (Math.Max(0, (int)(Min(a.Y, b.Y, c.Y) - _canvas.Y)), Math.Min(_canvas.Height - 1, (int)(Max(a.Y, b.Y, c.Y) - _canvas.Y)));
        // Shares of corners b and c at a pixel; they grow evenly along a row.
        var (bStep, cStep) = ((c.Y - a.Y) / area, -(b.Y - a.Y) / area);
        var (toB, toC) = (b.Carried - a.Carried, c.Carried - a.Carried);
        for (var y = y0; y <= y1; y += Lanes)
        {
            var dx = _canvas.X + x0 + 0.5f - a.X;
            var dy = Vector256.ConvertToSingle(Vector256.Create(_canvas.Y + y) + Vector256<int>.Indices) + Vector256.Create(0.5f) - Vector256.Create(a.Y);
            var shareB = (Vector256.Create(dx * (c.Y - a.Y)) - dy * (c.X - a.X)) / area;
            var shareC = ((b.X - a.X) * dy - Vector256.Create((b.Y - a.Y) * dx)) / area;
            FindSpans(x0, x1, shareB, shareC, bStep, cStep);
            for (var i = 0; i < Lanes && y + i <= y1; i++)
            {
                if (_first[i] <= _last[i]) FillSpan(_fragments.Row(y + i, _first[i], _last[i] + 1), _shareB[i], _shareC[i], bStep, cStep, a.Carried, toB, toC);
            }
        }
    }

    /// <summary>Colours what was filled.</summary>
    public void Finish()
    {
        var paints = _paints.ToArray();
        for (var y = 0; y < _canvas.Height; y++)
        {
            var (from, endExcl) = _fragments.Ready(y);
            if (from >= endExcl) continue;
            var pixels = _canvas.Row(y, from, endExcl);
            var fragments = _fragments.Row(y, from, endExcl);
            for (var i = 0; i < pixels.Length && i < fragments.Length; i++)
            {
                var carried = fragments[i].Carried;
                if (carried.X > 0) pixels[i] = paints[fragments[i].Paint].At(carried.Z, carried.W) * carried.Y;
            }
        }
    }

    // Where each of some rows enters and leaves the triangle, and the shares on entering: the rows go side by side from column to column.
    private void FindSpans(int x0, int x1, Vector256<float> shareB, Vector256<float> shareC, float bStep, float cStep)
    {
        var (none, first, last) = (Vector256.Create(int.MaxValue), Vector256.Create(int.MaxValue), Vector256.Create(-1));
        var (firstB, firstC) = (shareB, shareC);
        for (var x = x0; x <= x1; x++, shareB += Vector256.Create(bStep), shareC += Vector256.Create(cStep))
        {
            var outside = Vector256.LessThan(shareB, Vector256<float>.Zero) | Vector256.LessThan(shareC, Vector256<float>.Zero) | Vector256.GreaterThan(shareB + shareC, Vector256<float>.One);
            var entering = Vector256.AndNot(Vector256.Equals(first, none), outside.AsInt32());
            first = Vector256.ConditionalSelect(entering, Vector256.Create(x), first);
            (firstB, firstC) = (Vector256.ConditionalSelect(entering.AsSingle(), shareB, firstB), Vector256.ConditionalSelect(entering.AsSingle(), shareC, firstC));
            last = Vector256.ConditionalSelect(outside.AsInt32(), last, Vector256.Create(x));
        }

        first.CopyTo(_first);
        last.CopyTo(_last);
        firstB.CopyTo(_shareB);
        firstC.CopyTo(_shareC);
    }

    private void FillSpan(Span<Fragment> span, float shareB, float shareC, float bStep, float cStep, Vector4 carried, Vector4 toB, Vector4 toC)
    {
        var paint = _paints.Count - 1;
        for (var i = 0; i < span.Length; i++, shareB += bStep, shareC += cStep)
        {
            if (shareB < 0 || shareC < 0 || shareB + shareC > 1) continue;
            var here = carried + shareB * toB + shareC * toC;
            if (here.X > span[i].Carried.X) span[i] = new(here, paint);
        }
    }

    private static float Min(float a, float b, float c) => MathF.Min(a, MathF.Min(b, c));

    private static float Max(float a, float b, float c) => MathF.Max(a, MathF.Max(b, c));
}
