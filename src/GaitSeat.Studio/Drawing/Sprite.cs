using System.Numerics;
using System.Runtime.Intrinsics;

namespace GaitSeat.Studio;

/// <summary>A part painted once: colour and surface direction per texel, both weighted with coverage.</summary>
internal sealed class Sprite
{
    /// <summary>Sub-samples a side for the coverage of edge texels.</summary>
    private const int EdgeSamples = 3;
    private const int MarginTexels = 2;

    private Sprite(Loft loft, float texelsPerM)
    {
        TexelsPerM = texelsPerM;
        OriginX = MarginTexels - loft.MinX * texelsPerM;
        OriginY = MarginTexels + loft.MaxBack * texelsPerM;
        Width = (int)MathF.Ceiling((loft.MaxX - loft.MinX) * texelsPerM) + 2 * MarginTexels + 1;
        Height = (int)MathF.Ceiling((loft.MaxFront + loft.MaxBack) * texelsPerM) + 2 * MarginTexels + 1;
        Texels = new Vector256<float>[Width * Height];
        IsOpaque = new bool[Texels.Length];
    }

    public float TexelsPerM { get; }

    /// <summary>Texel at which the part's first joint lies.</summary>
    public float OriginX { get; }

    public float OriginY { get; }

    public int Width { get; }

    public int Height { get; }

    /// <summary>
    /// Lower half: red, green, blue, coverage; the first three already times coverage.
    /// Upper half: direction of the surface along x, y and towards the viewer, and gloss; all times coverage.
    /// </summary>
    public Vector256<float>[] Texels { get; }

    /// <summary>Where nothing below shows: the texel and its neighbours to the right, below and across are all covered to the full.</summary>
    public bool[] IsOpaque { get; }

    public static Sprite Paint(Loft loft, float texelsPerM)
    {
        var sprite = new Sprite(loft, texelsPerM);
        for (var column = 0; column < sprite.Width; column++) sprite.PaintColumn(loft, column);
        for (var at = 0; at + sprite.Width + 1 < sprite.Texels.Length; at++)
            sprite.IsOpaque[at] = sprite.IsFull(at) && sprite.IsFull(at + 1) && sprite.IsFull(at + sprite.Width) && sprite.IsFull(at + sprite.Width + 1);
        return sprite;
    }

    private bool IsFull(int at) => Texels[at][3] == 1;

    private void PaintColumn(Loft loft, int column)
    {
        var x = (column - OriginX) / TexelsPerM;
        // The outline at the sub-samples' places, the same in every row.
        Span<(float Front, float Back)> edges = stackalloc (float, float)[EdgeSamples];
        for (var i = 0; i < EdgeSamples; i++) edges[i] = loft.At(x + Aside(i) / TexelsPerM);
        for (var row = 0; row < Height; row++)
        {
            var y = (row - OriginY) / TexelsPerM;
            var covered = 0;
            for (var i = 0; i < EdgeSamples; i++)
            {
                var sampleY = y + Aside(i) / TexelsPerM;
                foreach (var (front, back) in edges)
                {
                    if (front + back > 0 && sampleY < front && sampleY > -back) covered++;
                }
            }

            if (covered > 0) PaintTexel(loft, x, y, row * Width + column, covered);
        }
    }

    private void PaintTexel(Loft loft, float x, float y, int at, int covered)
    {
        var skin = loft.Skin(x, y);
        var coverage = skin.Opacity * covered / (EdgeSamples * EdgeSamples);
        var normal = Normal(loft, x, y);
        Texels[at] = Vector256.Create((new Vector4(skin.Rgb, 1) * coverage).AsVector128(), (new Vector4(normal, skin.Gloss) * coverage).AsVector128());
    }

    // Of a sub-sample from the middle of its texel, texels.
    private static float Aside(int sample) => (sample + 0.5f) / EdgeSamples - 0.5f;

    private Vector3 Normal(Loft loft, float x, float y)
    {
        var step = 0.7f / TexelsPerM;
        var dx = (loft.Height(x + step, y) - loft.Height(x - step, y)) / (2 * step);
        var dy = (loft.Height(x, y + step) - loft.Height(x, y - step)) / (2 * step);
        return Vector3.Normalize(new Vector3(-dx, -dy, 1));
    }
}
