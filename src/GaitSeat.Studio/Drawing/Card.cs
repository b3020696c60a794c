using System.Numerics;
using System.Runtime.Intrinsics;

namespace GaitSeat.Studio;

/// <summary>A part laid into the picture plane.</summary>
/// <param name="dim">1 in full light; less for the far side.</param>
internal sealed class Card(Sprite sprite, Placement place, float dim)
{
    /// <summary>Fainter texels are not drawn.</summary>
    private const float Faintest = 0.004f;

    /// <summary>Notes where the card lets nothing through; to be asked from the last card to the first.</summary>
    /// <param name="number">From 1 on, in the order of drawing.</param>
    public void Hide(Canvas canvas, byte number)
    {
        var width = sprite.Width;
        foreach (var span in SpansOn(canvas))
        {
            var hiding = canvas.Hiding.Row(span.Y, span.From, span.EndExcl);
            var texel = span.Texel;
            for (var i = 0; i < hiding.Length; i++, texel += span.Step)
            {
                var whole = Vector128.ConvertToInt32Native(texel.AsVector128());
                var at = whole[1] * width + whole[0];
                if (hiding[i] == 0 && (uint)whole[0] < (uint)(width - 1) && (uint)at < (uint)sprite.IsOpaque.Length && sprite.IsOpaque[at]) hiding[i] = number;
            }
        }
    }

    /// <summary>Draws it where no later card hides it.</summary>
    public void Draw(Canvas canvas, byte number)
    {
        var shade = new CardShade(place, dim);
        foreach (var span in SpansOn(canvas)) DrawSpan(canvas.Row(span.Y, span.From, span.EndExcl), canvas.Hiding.Row(span.Y, span.From, span.EndExcl), number, span.Texel, span.Step, shade);
    }

    private void DrawSpan(Span<Vector4> pixels, ReadOnlySpan<byte> hiding, byte number, Vector2 texel, Vector2 step, CardShade shade)
    {
        var (texels, width) = (sprite.Texels, sprite.Width);
        for (var i = 0; i < pixels.Length && i < hiding.Length; i++, texel += step)
        {
            if (hiding[i] > number) continue;
            var whole = Vector128.ConvertToInt32Native(texel.AsVector128());
            var part = texel.AsVector128() - Vector128.ConvertToSingle(whole);
            var at = whole[1] * width + whole[0];
            if ((uint)whole[0] >= (uint)(width - 1) || (uint)(at + width + 1) >= (uint)texels.Length) continue;
            var (u, v) = (Vector256.Create(part[0]), Vector256.Create(part[1]));
            var here = Vector256.Lerp(Vector256.Lerp(texels[at], texels[at + 1], u), Vector256.Lerp(texels[at + width], texels[at + width + 1], u), v);
            var colour = here.GetLower().AsVector4();
            if (colour.W < Faintest) continue;
            pixels[i] = shade.Lit(colour, here.GetUpper().AsVector4()) + pixels[i] * (1 - colour.W);
        }
    }

    // The pixels of each row that see the card, and the texel of the first.
    private IEnumerable<Span> SpansOn(Canvas canvas)
    {
        var (ax, ay) = (place.AlongX / sprite.TexelsPerM, place.AlongY / sprite.TexelsPerM);
        var determinant = ax.X * ay.Y - ax.Y * ay.X;
        if (MathF.Abs(determinant) < 1e-9f) yield break;
        // From picture to texels: column = (p - origin) . toColumn + OriginX, and so for rows.
        var toColumn = new Vector2(ay.Y, -ay.X) / determinant;
        var toRow = new Vector2(-ax.Y, ax.X) / determinant;
        var (top, bottom) = RowsOf(ax, ay);
        for (var y = Math.Max(0, top - canvas.Y); y <= Math.Min(canvas.Height - 1, bottom - canvas.Y); y++)
        {
            var start = new Vector2(canvas.X + 0.5f, canvas.Y + y + 0.5f) - place.Origin;
            var column = Vector2.Dot(start, toColumn) + sprite.OriginX;
            var row = Vector2.Dot(start, toRow) + sprite.OriginY;
            var (from, to) = (0f, canvas.Width - 1f);
            Narrow(ref from, ref to, column, toColumn.X, sprite.Width - 1.001f);
            Narrow(ref from, ref to, row, toRow.X, sprite.Height - 1.001f);
            var (first, last) = ((int)MathF.Ceiling(from), (int)MathF.Floor(to));
            if (first <= last) yield return new(y, first, last + 1, new(column + first * toColumn.X, row + first * toRow.X), new(toColumn.X, toRow.X));
        }
    }

    private (int Top, int Bottom) RowsOf(Vector2 ax, Vector2 ay)
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

    private readonly record struct Span(int Y, int From, int EndExcl, Vector2 Texel, Vector2 Step);
}
