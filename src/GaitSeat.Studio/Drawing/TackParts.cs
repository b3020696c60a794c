using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>Saddle, cloth, girth, stirrup. Saddle coordinates: x forward of the seat, y above it, m.</summary>
internal sealed class TackParts(Look look, int seed)
{
    private readonly ValueNoise _noise = new(seed + 202);
    private readonly Vector3 _leather = Tint.Parse(look.Saddle);

    /// <summary>White cloth with a border and a quilted pattern; hangs from the back, its axis level with the seat.</summary>
    public Loft Cloth()
    {
        var (cloth, border) = (Tint.Parse(look.SaddleCloth), Tint.Parse(look.ClothBorder));
        return new Loft(
            (x, y) =>
            {
                var edge = MathF.Min(MathF.Min(x + 0.345f, 0.335f - x), y + 0.50f);
                var piped = edge is > 0.022f and < 0.042f;
                var check = (MathF.Floor((x + y) * 16) + MathF.Floor((x - y) * 16)) % 2 == 0;
                var colour = piped ? border : cloth * (check ? 0.95f : 1);
                return new Skin(colour * (0.94f + 0.1f * _noise.Layers(14 * x, 14 * y, 2)), 0.02f);
            },
            new(-0.348f, -0.05f, 0.34f), new(-0.335f, -0.028f, 0.455f), new(-0.28f, -0.032f, 0.495f), new(-0.05f, -0.055f, 0.50f), new(0.15f, -0.02f, 0.495f), new(0.27f, 0.052f, 0.48f), new(0.32f, 0.062f, 0.44f), new(0.338f, 0.05f, 0.34f))
        { Roundness = 0.16f, Bump = (x, y) => 0.002f * _noise.At(12 * x, 12 * y) };
    }

    /// <summary>Seat, pommel and cantle.</summary>
    public Loft Seat() => new(
        (x, y) => Leather(x, y, y < -0.075f ? 0.85f : 1.05f),
        new(-0.265f, 0.055f, -0.05f), new(-0.25f, 0.085f, 0.02f), new(-0.20f, 0.075f, 0.09f), new(-0.10f, 0.022f, 0.12f), new(0.0f, 0.004f, 0.14f), new(0.08f, 0.018f, 0.15f), new(0.16f, 0.065f, 0.14f), new(0.20f, 0.075f, 0.08f), new(0.22f, 0.05f, -0.03f))
    { Roundness = 0.35f };

    /// <summary>The flap under the rider's leg.</summary>
    public Loft Flap() => new(
        (x, y) => Leather(x + 3, y, MathF.Abs(x - 0.40f) < 0.006f ? 0.7f : 1),
        new(-0.02f, 0.10f, 0.10f), new(0.04f, 0.15f, 0.12f), new(0.20f, 0.19f, 0.12f), new(0.34f, 0.175f, 0.13f), new(0.42f, 0.12f, 0.12f), new(0.452f, 0.05f, 0.06f), new(0.458f, 0f, 0f))
    { Roundness = 0.2f };

    public Loft Girth() => new(
        (x, y) => Leather(x + 5, y, 0.8f),
        new(0f, 0.040f, 0.040f), new(0.02f, 0.042f, 0.042f), new(0.275f, 0.036f, 0.036f), new(0.287f, 0.03f, 0.03f))
    { Roundness = 0.3f };

    /// <summary>One metre of strap; stretched to its place.</summary>
    public static Loft Strap(Vector3 colour, float halfWidthM, float gloss) => new(
        (_, _) => new Skin(colour, gloss),
        new(0f, halfWidthM, halfWidthM), new(0.5f, halfWidthM, halfWidthM), new(1f, halfWidthM, halfWidthM));

    /// <summary>The stirrup iron edge-on: from its eye (0) to under the sole.</summary>
    public static Loft Iron() => new(
        (x, _) => new Skin(x > 0.128f ? new Vector3(0.25f, 0.25f, 0.26f) : new Vector3(0.78f, 0.80f, 0.83f), 1),
        new(-0.012f, 0.008f, 0.008f), new(0.0f, 0.012f, 0.012f), new(0.06f, 0.009f, 0.009f), new(0.12f, 0.010f, 0.010f), new(0.130f, 0.034f, 0.034f), new(0.142f, 0.036f, 0.036f), new(0.148f, 0.03f, 0.03f));

    private Skin Leather(float x, float y, float shade) =>
        new(_leather * (shade * (0.85f + 0.3f * _noise.Layers(9 * x, 9 * y, 3))), 0.55f);
}
