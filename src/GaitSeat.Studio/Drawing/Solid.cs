using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>A part as a body: rings of points around its axis, with the colours of its side view on both sides.</summary>
internal sealed class Solid
{
    /// <summary>Points around each ring.</summary>
    private const int Around = 12;

    /// <summary>A part of few sections gets a ring between each two: its outline is curved there.</summary>
    private const int FewSections = 9;

    private Solid(Vector3[] points, Vector3[] normals, int[] triangles, Paint paint) =>
        (Points, Normals, Triangles, Colours) = (points, normals, triangles, paint);

    /// <summary>In part coordinates, m: along, towards the front, across.</summary>
    public Vector3[] Points { get; }

    public Vector3[] Normals { get; }

    public int[] Triangles { get; }

    public Paint Colours { get; }

    /// <summary>The side view's colours, without light.</summary>
    internal sealed record Paint(Vector4[] Rgb, int Width, int Height, float OriginX, float OriginY, float TexelsPerM)
    {
        private readonly Vector2 _origin = new(OriginX, OriginY);
        private readonly Vector2 _last = new(Width - 1.01f, Height - 1.01f);

        /// <summary>Colour at a place of the part, read between texels.</summary>
        public Vector4 At(float x, float y)
        {
            var texel = Vector2.Clamp(new Vector2(x, y) * TexelsPerM + _origin, Vector2.Zero, _last);
            var (column, row) = (float.ConvertToIntegerNative<int>(texel.X), float.ConvertToIntegerNative<int>(texel.Y));
            var (u, v, at) = (texel.X - column, texel.Y - row, row * Width + column);
            return Vector4.Lerp(Vector4.Lerp(Rgb[at], Rgb[at + 1], u), Vector4.Lerp(Rgb[at + Width], Rgb[at + Width + 1], u), v);
        }
    }

    public static Solid Of(Loft loft, float texelsPerM, float depth)
    {
        var along = AlongAxis(loft);
        var points = new Vector3[along.Length * Around];
        var normals = new Vector3[points.Length];
        for (var ring = 0; ring < along.Length; ring++) PlaceRing(loft, along, ring, depth, points, normals);
        return new(points, normals, Mesh(along.Length), PaintOf(loft, texelsPerM));
    }

    private static float[] AlongAxis(Loft loft)
    {
        // The very ends lie just inside, where the outline still has a reach.
        const float InsetM = 5e-4f;
        var perSection = loft.Sections.Count <= FewSections ? 2 : 1;
        var x = new List<float>();
        for (var i = 0; i + 1 < loft.Sections.Count; i++)
        {
            for (var k = 0; k < perSection; k++) x.Add(loft.Sections[i].X + (loft.Sections[i + 1].X - loft.Sections[i].X) * k / perSection);
        }

        x.Add(loft.MaxX);
        return [.. x.Select(v => Math.Clamp(v, loft.MinX + InsetM, loft.MaxX - InsetM))];
    }

    private static void PlaceRing(Loft loft, float[] along, int ring, float depth, Vector3[] points, Vector3[] normals)
    {
        var (front, back) = loft.At(along[ring]);
        var (middle, half) = ((front - back) / 2, Math.Max(0, (front + back) / 2));
        var (before, after) = (HalfAt(loft, along[Math.Max(0, ring - 1)]), HalfAt(loft, along[Math.Min(along.Length - 1, ring + 1)]));
        var taper = (after - before) / Math.Max(1e-4f, along[Math.Min(along.Length - 1, ring + 1)] - along[Math.Max(0, ring - 1)]);
        for (var i = 0; i < Around; i++)
        {
            var (sin, cos) = MathF.SinCos(2 * MathF.PI * i / Around);
            points[ring * Around + i] = new(along[ring], middle + half * cos, half * depth * sin);
            normals[ring * Around + i] = Vector3.Normalize(new(-taper, cos, sin / depth));
        }
    }

    private static float HalfAt(Loft loft, float x)
    {
        var (front, back) = loft.At(x);
        return Math.Max(0, (front + back) / 2);
    }

    private static int[] Mesh(int rings)
    {
        var triangles = new List<int>();
        for (var ring = 0; ring + 1 < rings; ring++)
        {
            for (var i = 0; i < Around; i++)
            {
                var (a, b) = (ring * Around + i, ring * Around + (i + 1) % Around);
                triangles.AddRange([a, b, a + Around, b, b + Around, a + Around]);
            }
        }

        return [.. triangles];
    }

    private static Paint PaintOf(Loft loft, float texelsPerM)
    {
        var width = (int)MathF.Ceiling((loft.MaxX - loft.MinX) * texelsPerM) + 2;
        var height = (int)MathF.Ceiling((loft.MaxFront + loft.MaxBack) * texelsPerM) + 2;
        var (originX, originY) = (-loft.MinX * texelsPerM, loft.MaxBack * texelsPerM);
        var rgb = new Vector4[width * height];
        for (var i = 0; i < rgb.Length; i++) rgb[i] = loft.Skin((i % width - originX) / texelsPerM, (i / width - originY) / texelsPerM).Rgb.AsVector4();
        return new(rgb, width, height, originX, originY, texelsPerM);
    }
}
