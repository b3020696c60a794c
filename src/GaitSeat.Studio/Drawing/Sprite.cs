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

    public static Sprite Paint(Loft loft, float texelsPerM)
    {
        var sprite = new Sprite(loft, texelsPerM);
        for (var row = 0; row < sprite.Height; row++)
        {
            for (var column = 0; column < sprite.Width; column++) sprite.PaintTexel(loft, column, row);
        }

        return sprite;
    }

    private void PaintTexel(Loft loft, int column, int row)
    {
        var (x, y) = ((column - OriginX) / TexelsPerM, (row - OriginY) / TexelsPerM);
        var covered = 0;
        for (var i = 0; i < EdgeSamples * EdgeSamples; i++)
        {
            var dx = ((i % EdgeSamples) + 0.5f) / EdgeSamples - 0.5f;
            var dy = ((i / EdgeSamples) + 0.5f) / EdgeSamples - 0.5f;
            var (front, back) = loft.At(x + dx / TexelsPerM);
            var sampleY = y + dy / TexelsPerM;
            if (front + back > 0 && sampleY < front && sampleY > -back) covered++;
        }

        if (covered == 0) return;
        var skin = loft.Skin(x, y);
        var coverage = skin.Opacity * covered / (EdgeSamples * EdgeSamples);
        var normal = Normal(loft, x, y);
        Texels[row * Width + column] = Vector256.Create((new Vector4(skin.Rgb, 1) * coverage).AsVector128(), (new Vector4(normal, skin.Gloss) * coverage).AsVector128());
    }

    private Vector3 Normal(Loft loft, float x, float y)
    {
        var step = 0.7f / TexelsPerM;
        var dx = (loft.Height(x + step, y) - loft.Height(x - step, y)) / (2 * step);
        var dy = (loft.Height(x, y + step) - loft.Height(x, y - step)) / (2 * step);
        return Vector3.Normalize(new Vector3(-dx, -dy, 1));
    }
}
