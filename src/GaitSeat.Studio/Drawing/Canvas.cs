using System.Numerics;
using System.Runtime.Intrinsics;

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

/// <summary>The patch of the picture that is drawn on; colours 0..1. Pixels are read from the picture when first asked for: most of a patch stays as it is.</summary>
internal sealed class Canvas
{
    /// <summary>Light from the upper left, in front: x right, y down, z to the viewer.</summary>
    private static readonly Vector3 Light = Vector3.Normalize(new Vector3(-0.45f, -0.72f, 0.62f));
    private static readonly Vector3 Halfway = Vector3.Normalize(Light + Vector3.UnitZ);

    private Vector4[] _pixels = [];
    private Fragment[] _fragments = [];
    private (int From, int EndExcl)[] _touched = [];
    private byte[] _picture = [];
    private int _pictureWidthPx;

    public int X { get; private set; }

    public int Y { get; private set; }

    public int Width { get; private set; }

    public int Height { get; private set; }

    /// <param name="picture">The whole picture, packed RGB.</param>
    public void Begin(Patch patch, byte[] picture, int pictureWidthPx)
    {
        (X, Y, Width, Height) = patch;
        (_picture, _pictureWidthPx) = (picture, pictureWidthPx);
        var area = Width * Height;
        if (_pixels.Length < area) (_pixels, _fragments) = (new Vector4[area], new Fragment[area]);
        if (_touched.Length < Height) _touched = new (int, int)[Height];
        _touched.AsSpan(0, Height).Fill((int.MaxValue, int.MinValue));
    }

    /// <summary>The pixels of a row that were asked for; none: the end lies before the start.</summary>
    public (int From, int EndExcl) Touched(int y) => _touched[y];

    /// <summary>Pixels of a row, at least one, to draw on.</summary>
    public Span<Vector4> Row(int y, int from, int endExcl)
    {
        Demand(y, from, endExcl);
        return _pixels.AsSpan(y * Width + from, endExcl - from);
    }

    /// <summary>What solids show in pixels of a row, at least one.</summary>
    public Span<Fragment> Fragments(int y, int from, int endExcl)
    {
        Demand(y, from, endExcl);
        return _fragments.AsSpan(y * Width + from, endExcl - from);
    }

    private void Demand(int y, int from, int endExcl)
    {
        var touched = _touched[y];
        if (from < touched.From || endExcl > touched.EndExcl) Touch(y, from, endExcl);
    }

    // Keeps the touched pixels of a row in one piece.
    private void Touch(int y, int from, int endExcl)
    {
        ref var touched = ref _touched[y];
        if (touched.EndExcl < touched.From) touched = (from, from);
        if (from < touched.From) Read(y, from, touched.From);
        if (endExcl > touched.EndExcl) Read(y, touched.EndExcl, endExcl);
        touched = (Math.Min(from, touched.From), Math.Max(endExcl, touched.EndExcl));
    }

    private void Read(int y, int from, int endExcl)
    {
        _fragments.AsSpan(y * Width + from, endExcl - from).Clear();
        var pixels = _pixels.AsSpan(y * Width + from, endExcl - from);
        var source = _picture.AsSpan(3 * ((Y + y) * _pictureWidthPx + X + from), 3 * pixels.Length);
        for (var x = 0; x < pixels.Length; x++) pixels[x] = RgbPixel.Read(source, 3 * x) * (1 / 255f);
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
                DrawSpan(sprite, Row(y, first, last + 1), new Vector2(column + first * toColumn.X, row + first * toRow.X), new Vector2(toColumn.X, toRow.X), shade);
        }
    }

    private static void DrawSpan(Sprite sprite, Span<Vector4> pixels, Vector2 texel, Vector2 step, Shade shade)
    {
        var (texels, width) = (sprite.Texels, sprite.Width);
        for (var i = 0; i < pixels.Length; i++, texel += step)
        {
            var whole = Vector128.ConvertToInt32Native(texel.AsVector128());
            var part = texel.AsVector128() - Vector128.ConvertToSingle(whole);
            var at = whole[1] * width + whole[0];
            if ((uint)whole[0] >= (uint)(width - 1) || (uint)(at + width + 1) >= (uint)texels.Length) continue;
            var (u, v) = (Vector256.Create(part[0]), Vector256.Create(part[1]));
            var here = Vector256.Lerp(Vector256.Lerp(texels[at], texels[at + 1], u), Vector256.Lerp(texels[at + width], texels[at + width + 1], u), v);
            var colour = here.GetLower().AsVector4();
            if (colour.W < 0.004f) continue;
            pixels[i] = shade.Lit(colour, here.GetUpper().AsVector4()) + pixels[i] * (1 - colour.W);
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
        private readonly Vector4 _x;
        private readonly Vector4 _y;
        private readonly Vector4 _z;
        private readonly float _dim;

        public Shade(Placement place, float dim)
        {
            var (x, y) = (Vector2.Normalize(place.AlongX), Vector2.Normalize(place.AlongY));
            Vector3 InPart(Vector3 d) => new(x.X * d.X + x.Y * d.Y, y.X * d.X + y.Y * d.Y, d.Z);
            var (light, sky, half) = (InPart(Light), InPart(-Vector3.UnitY), InPart(Halfway));
            (_x, _y, _z) = (new(light.X, sky.X, half.X, 0), new(light.Y, sky.Y, half.Y, 0), new(light.Z, sky.Z, half.Z, 0));
            _dim = dim;
        }

        public Vector4 Lit(Vector4 colour, Vector4 surface)
        {
            var normal = surface / colour.W;
            // How far it faces the light, the sky and the way halfway to the viewer.
            var facing = normal.X * _x + normal.Y * _y + normal.Z * _z;
            var turnedTo = Vector128.MaxNative(facing.AsVector128(), Vector128<float>.Zero).AsVector4();
            var strength = _dim * (Ambient + SkyShare * facing.Y + Direct * turnedTo.X);
            var shine = turnedTo.Z * turnedTo.Z;
            shine *= shine;
            shine *= shine;
            var spot = _dim * normal.W * shine * shine * 0.45f * colour.W;
            return colour * strength + new Vector4(spot);
        }
    }
}
