using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Where a part lies in the picture: its first joint, and the pixels one metre along x and y of the part spans.</summary>
internal readonly record struct Placement(Vector2 Origin, Vector2 AlongX, Vector2 AlongY)
{
    /// <summary>Between two joints in the picture. The + side is the front for a horse that faces right; <paramref name="facing"/> -1 mirrors it.</summary>
    /// <param name="length">Distance of the joints in the part, m.</param>
    /// <param name="pxPerM">Scale across the part.</param>
    public static Placement Between(Vector2 first, Vector2 second, float length, float pxPerM, int facing)
    {
        var along = second - first;
        var px = Math.Max(along.Length(), 1e-3f);
        var across = new Vector2(along.Y, -along.X) * (facing * pxPerM / px);
        return new(first, along / length, across);
    }
}

/// <summary>The patch of the picture that is drawn on; colours 0..1.</summary>
internal sealed class Canvas
{
    /// <summary>Light from the upper left, in front: x right, y down, z to the viewer.</summary>
    private static readonly Vector3 Light = Vector3.Normalize(new Vector3(-0.45f, -0.72f, 0.62f));
    private static readonly Vector3 Halfway = Vector3.Normalize(Light + Vector3.UnitZ);

    private Vector4[] _pixels = [];
    private Vector4[] _sum = [];
    private float[] _nearness = [];

    public int X { get; private set; }

    public int Y { get; private set; }

    public int Width { get; private set; }

    public int Height { get; private set; }

    public Span<Vector4> Pixels => _pixels.AsSpan(0, Width * Height);

    public Span<Vector4> Row(int y) => _pixels.AsSpan(y * Width, Width);

    public void Reset(int x, int y, int width, int height)
    {
        (X, Y, Width, Height) = (x, y, width, height);
        if (_pixels.Length < width * height) _pixels = new Vector4[width * height];
    }

    /// <summary>Room to add up the instants of one exposure, zeroed; kept from frame to frame, since a new one each would be megabytes.</summary>
    public Span<Vector4> ClearedSum(int length)
    {
        if (_sum.Length < length) _sum = new Vector4[length];
        var sum = _sum.AsSpan(0, length);
        sum.Clear();
        return sum;
    }

    /// <summary>Room for how near each pixel's surface is; not cleared.</summary>
    public float[] Nearness()
    {
        if (_nearness.Length < Width * Height) _nearness = new float[Width * Height];
        return _nearness;
    }

    /// <param name="dim">1 in full light; less for the far side.</param>
    public void Draw(Sprite sprite, Placement place, float dim)
    {
        var (ax, ay) = (place.AlongX / sprite.TexelsPerM, place.AlongY / sprite.TexelsPerM);
        var determinant = ax.X * ay.Y - ax.Y * ay.X;
        if (MathF.Abs(determinant) < 1e-9f) return;
        // From picture to texels: column = (p - origin) . toColumn + OriginX, and so for rows.
        var toColumn = new Vector2(ay.Y, -ay.X) / determinant;
        var toRow = new Vector2(-ax.Y, ax.X) / determinant;
        var shade = new Shade(place, dim);
        var (top, bottom) = RowsOf(sprite, place, ax, ay);
        for (var y = Math.Max(0, top - Y); y <= Math.Min(Height - 1, bottom - Y); y++)
        {
            var start = new Vector2(X + 0.5f, Y + y + 0.5f) - place.Origin;
            var column = Vector2.Dot(start, toColumn) + sprite.OriginX;
            var row = Vector2.Dot(start, toRow) + sprite.OriginY;
            var (from, to) = (0f, Width - 1f);
            Narrow(ref from, ref to, column, toColumn.X, sprite.Width - 1.001f);
            Narrow(ref from, ref to, row, toRow.X, sprite.Height - 1.001f);
            var (first, last) = ((int)MathF.Ceiling(from), (int)MathF.Floor(to));
            if (first <= last)
                DrawSpan(sprite, Row(y)[first..(last + 1)], new Vector2(column + first * toColumn.X, row + first * toRow.X), new Vector2(toColumn.X, toRow.X), shade);
        }
    }

    private static void DrawSpan(Sprite sprite, Span<Vector4> pixels, Vector2 texel, Vector2 step, Shade shade)
    {
        var (colours, surfaces, width) = (sprite.Colour, sprite.Surface, sprite.Width);
        for (var i = 0; i < pixels.Length; i++, texel += step)
        {
            var (column, row) = ((int)texel.X, (int)texel.Y);
            var at = row * width + column;
            if ((uint)column >= (uint)(width - 1) || (uint)(at + width + 1) >= (uint)colours.Length) continue;
            var (u, v) = (texel.X - column, texel.Y - row);
            var colour = Vector4.Lerp(Vector4.Lerp(colours[at], colours[at + 1], u), Vector4.Lerp(colours[at + width], colours[at + width + 1], u), v);
            if (colour.W < 0.004f) continue;
            var surface = Vector4.Lerp(Vector4.Lerp(surfaces[at], surfaces[at + 1], u), Vector4.Lerp(surfaces[at + width], surfaces[at + width + 1], u), v);
            pixels[i] = shade.Lit(colour, surface) + pixels[i] * (1 - colour.W);
        }
    }

    private static (int Top, int Bottom) RowsOf(Sprite sprite, Placement place, Vector2 ax, Vector2 ay)
    {
        var low = ax * -sprite.OriginX + ay * -sprite.OriginY;
        var a = low.Y;
        var b = (low + ax * sprite.Width).Y;
        var c = (low + ay * sprite.Height).Y;
        var d = b + c - a;
        return ((int)MathF.Floor(place.Origin.Y + MathF.Min(MathF.Min(a, b), MathF.Min(c, d))),
            (int)MathF.Ceiling(place.Origin.Y + MathF.Max(MathF.Max(a, b), MathF.Max(c, d))));
    }

    // Keeps 0 <= start + i * step <= limit.
    private static void Narrow(ref float from, ref float to, float start, float step, float limit)
    {
        if (MathF.Abs(step) < 1e-9f)
        {
            if (start < 0 || start > limit) to = -1;
            return;
        }

        var (a, b) = (-start / step, (limit - start) / step);
        from = MathF.Max(from, MathF.Min(a, b));
        to = MathF.Min(to, MathF.Max(a, b));
    }

    /// <summary>Light on a part as it lies in the picture.</summary>
    private readonly struct Shade
    {
        private const float Ambient = 0.60f;
        private const float SkyShare = 0.10f;
        private const float Direct = 0.52f;
        private readonly Vector4 _light;
        private readonly Vector4 _sky;
        private readonly Vector4 _half;
        private readonly float _dim;

        public Shade(Placement place, float dim)
        {
            var (x, y) = (Vector2.Normalize(place.AlongX), Vector2.Normalize(place.AlongY));
            Vector4 InPart(Vector3 d) => new(x.X * d.X + x.Y * d.Y, y.X * d.X + y.Y * d.Y, d.Z, 0);
            (_light, _sky, _half, _dim) = (InPart(Light), InPart(-Vector3.UnitY), InPart(Halfway), dim);
        }

        public Vector4 Lit(Vector4 colour, Vector4 surface)
        {
            var normal = surface / colour.W;
            var direct = MathF.Max(0, Vector4.Dot(normal, _light));
            var strength = _dim * (Ambient + SkyShare * Vector4.Dot(normal, _sky) + Direct * direct);
            var half = MathF.Max(0, Vector4.Dot(normal, _half));
            var shine = half * half;
            shine *= shine;
            shine *= shine;
            var spot = _dim * normal.W * shine * shine * 0.45f * colour.W;
            return new Vector4(colour.X * strength + spot, colour.Y * strength + spot, colour.Z * strength + spot, colour.W);
        }
    }
}
