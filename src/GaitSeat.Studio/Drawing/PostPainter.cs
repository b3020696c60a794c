using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Draws the posts over the finished frame, smeared by the turning of the camera during the exposure.</summary>
internal sealed class PostPainter(Posts posts, ClipScript script)
{
    private readonly ValueNoise _grain = new(script.Seed + 505);
    private readonly Vector3 _colour = Tint.Parse(script.Look.Fence) * 0.8f;

    /// <param name="opening">The camera as the exposure begins.</param>
    /// <param name="closing">As it ends.</param>
    public void Draw(CameraState opening, CameraState closing, Span<byte> rgb)
    {
        var before = posts.Seen(opening).ToDictionary(p => p.Number);
        foreach (var post in posts.Seen(closing))
        {
            if (before.TryGetValue(post.Number, out var first)) Draw(first, post, rgb);
        }
    }

    private void Draw(PostInPicture first, PostInPicture last, Span<byte> rgb)
    {
        var (width, run) = (2 * last.HalfWidthPx, Math.Abs(last.Foot.X - first.Foot.X));
        var (foot, top) = ((first.Foot + last.Foot) / 2, (first.Top + last.Top) / 2);
        var slope = (foot.X - top.X) / (foot.Y - top.Y);
        var (ramp, most) = (Math.Max(1, Math.Min(width, run)), Math.Min(1, width / Math.Max(run, 1e-3f)));
        var reach = (width + run) / 2 + 1;
        for (var y = Math.Max(0, (int)top.Y); y < Math.Min(script.HeightPx, (int)foot.Y); y++)
        {
            var middle = top.X + (y - top.Y) * slope;
            for (var x = Math.Max(0, (int)(middle - reach)); x <= Math.Min(script.WidthPx - 1, (int)(middle + reach)); x++)
            {
                var off = x + 0.5f - middle;
                var cover = most * Math.Clamp(((width + run) / 2 - Math.Abs(off)) / ramp + 0.5f, 0, 1);
                if (cover <= 0) continue;
                var up = (foot.Y - y) / (foot.Y - top.Y);
                var colour = _colour * (0.75f + 0.35f * _grain.Layers(9 * off / width + 31 * last.Number, 40 * up, 2) - 0.4f * off / (width + run));
                Mix(rgb.Slice(3 * (y * script.WidthPx + x), 3), colour, cover);
            }
        }
    }

    private static void Mix(Span<byte> pixel, Vector3 colour, float cover)
    {
        for (var i = 0; i < 3; i++) pixel[i] = (byte)Math.Clamp(pixel[i] + cover * (255 * colour[i] - pixel[i]) + 0.5f, 0, 255);
    }
}
