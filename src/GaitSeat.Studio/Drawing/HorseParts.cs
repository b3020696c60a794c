using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>
/// The horse's parts, a warmblood of about 165 cm. Trunk coordinates: x forward of the saddle's seat, y above it, m.
/// Every colour is fixed to its part, so that what optical flow follows moves exactly as the part does.
/// </summary>
internal sealed class HorseParts
{
    /// <summary>The trunk's axis lies this far under the saddle's seat.</summary>
    public const float TrunkAxisBelowSeatM = 0.34f;
    public const float NeckM = 0.86f;
    public const float HeadM = 0.60f;
    public const float TailM = 0.80f;

    private readonly ValueNoise _noise;
    private readonly Look _look;
    private readonly Vector3 _coat;
    private readonly Vector3 _points;

    public HorseParts(Look look, int seed)
    {
        (_look, _noise) = (look, new ValueNoise(seed + 101));
        (_coat, _points) = (Tint.Parse(look.Coat), Tint.Parse(look.Points));
    }

    public Loft Trunk()
    {
        // Top line and belly over the seat, m; turned into reaches from the axis.
        (float X, float Top, float Belly)[] line =
        [
            (-1.005f, -0.30f, -0.30f), (-0.995f, -0.17f, -0.43f), (-0.96f, -0.07f, -0.53f), (-0.88f, 0.015f, -0.60f), (-0.75f, 0.065f, -0.625f), (-0.60f, 0.06f, -0.60f), (-0.42f, 0.01f, -0.635f),
            (-0.22f, -0.045f, -0.69f), (0.0f, -0.065f, -0.725f), (0.18f, -0.02f, -0.725f), (0.32f, 0.06f, -0.69f), (0.44f, 0.02f, -0.655f), (0.56f, -0.10f, -0.62f), (0.66f, -0.24f, -0.565f), (0.705f, -0.34f, -0.50f), (0.715f, -0.42f, -0.42f),
        ];
        var axis = -TrunkAxisBelowSeatM;
        return new Loft(TrunkSkin, [.. line.Select(l => new Section(l.X, l.Top - axis, axis - l.Belly))])
        {
            Roundness = 0.85f,
            Bump = (x, y) => 0.012f * Muscle(x, y, -0.78f, 0.14f, 0.26f) + 0.014f * Muscle(x, y, 0.40f, 0.02f, 0.20f) + 0.004f * _noise.Layers(3 * x, 3 * y, 2),
        };
    }

    public Loft Neck() => new(
        (x, y) =>
        {
            var mane = y > NeckCrest(x) - 0.045f - 0.05f * _noise.At(40 * x, 3) && x is > 0.10f and < 0.88f;
            var skin = mane ? new Skin(_points * (0.75f + 0.5f * _noise.At(60 * x, 12 * y)), 0.3f) : new Skin(Coat(x + 2, y), 0.35f);
            return skin with { Opacity = Tint.Step(-0.16f, 0.02f, x + 0.1f * y) };
        },
        new(-0.16f, 0.02f, 0.02f), new(-0.12f, 0.16f, 0.20f), new(0.0f, 0.215f, 0.285f), new(0.18f, 0.185f, 0.235f), new(0.40f, 0.15f, 0.165f), new(0.62f, 0.13f, 0.125f), new(0.78f, 0.115f, 0.115f), new(0.88f, 0.085f, 0.10f), new(0.93f, 0.02f, 0.03f))
    { Roundness = 0.7f, Bump = (x, y) => 0.006f * _noise.At(8 * x, 5 * y) };

    public Loft Head() => new(
        HeadSkin,
        new(-0.065f, 0.0f, 0.0f), new(-0.055f, 0.05f, 0.06f), new(0.0f, 0.085f, 0.115f), new(0.10f, 0.095f, 0.15f), new(0.20f, 0.09f, 0.145f), new(0.32f, 0.075f, 0.095f), new(0.45f, 0.065f, 0.065f), new(0.54f, 0.07f, 0.065f), new(0.60f, 0.06f, 0.06f), new(0.625f, 0.035f, 0.04f), new(0.635f, 0.0f, 0.0f))
    { Roundness = 0.7f };

    public Loft Ear() => new(
        (x, y) => new Skin(Coat(x + 5, y) * 0.85f),
        new(-0.03f, 0.02f, 0.02f), new(0.03f, 0.033f, 0.028f), new(0.09f, 0.026f, 0.02f), new(0.15f, 0.008f, 0.004f), new(0.16f, 0, 0));

    public Loft Tail() => new(
        (x, y) => new Skin(_points * (0.7f + 0.6f * _noise.At(70 * y, 4 * x)), 0.25f),
        new(-0.05f, 0.02f, 0.02f), new(0.0f, 0.045f, 0.045f), new(0.15f, 0.06f, 0.065f), new(0.40f, 0.07f, 0.085f), new(0.62f, 0.06f, 0.075f), new(0.76f, 0.03f, 0.045f), new(0.80f, 0.0f, 0.0f));

    /// <summary>Shoulder to elbow, melting into the trunk above.</summary>
    public Loft ForeUpper() => new(
        (x, y) => new Skin(Coat(x + 7, y), 0.3f, Tint.Step(0.05f, 0.30f, x)),
        new(-0.05f, 0.05f, 0.05f), new(0.05f, 0.15f, 0.15f), new(0.25f, 0.135f, 0.135f), new(0.42f, 0.105f, 0.11f), new(0.50f, 0.06f, 0.06f), new(0.53f, 0f, 0f)) { Roundness = 0.5f };

    public Loft ForeArm() => Limb(0.40f, dark: 0.28f, [new(-0.10f, 0.03f, 0.03f), new(-0.06f, 0.085f, 0.095f), new(0.06f, 0.085f, 0.09f), new(0.20f, 0.062f, 0.062f), new(0.33f, 0.048f, 0.046f), new(0.40f, 0.052f, 0.046f), new(0.44f, 0.040f, 0.036f), new(0.46f, 0.0f, 0.0f)]);

    public Loft HindUpper() => new(
        (x, y) => new Skin(Coat(x + 9, y), 0.3f, Tint.Step(0.02f, 0.24f, x)),
        new(-0.08f, 0.06f, 0.06f), new(0.0f, 0.19f, 0.19f), new(0.15f, 0.185f, 0.19f), new(0.30f, 0.145f, 0.15f), new(0.42f, 0.08f, 0.09f), new(0.46f, 0f, 0f)) { Roundness = 0.5f };

    public Loft Gaskin() => Limb(0.44f, dark: 0.36f, [new(-0.12f, 0.03f, 0.03f), new(-0.08f, 0.12f, 0.11f), new(0.05f, 0.11f, 0.105f), new(0.20f, 0.07f, 0.075f), new(0.33f, 0.05f, 0.05f), new(0.44f, 0.052f, 0.05f), new(0.48f, 0.036f, 0.034f), new(0.50f, 0f, 0f)]);

    public Loft Cannon(bool stocking) => new(
        (x, y) => LegSkin(x, y, stocking && x > 0.10f, dark: 0),
        new(-0.055f, 0.0f, 0.0f), new(-0.04f, 0.036f, 0.036f), new(0.0f, 0.047f, 0.044f), new(0.06f, 0.036f, 0.036f), new(0.16f, 0.030f, 0.034f), new(0.26f, 0.034f, 0.040f), new(0.30f, 0.036f, 0.042f), new(0.335f, 0.024f, 0.030f), new(0.345f, 0f, 0f));

    /// <summary>Fetlock to ground.</summary>
    public Loft Pastern(bool stocking) => new(
        (x, y) => x > 0.115f ? new Skin(new Vector3(0.17f, 0.15f, 0.14f) * (0.8f + 0.4f * _noise.At(60 * y, 30 * x)), 0.2f) : LegSkin(x, y, stocking, dark: 0),
        new(-0.04f, 0.0f, 0.0f), new(-0.03f, 0.030f, 0.034f), new(0.0f, 0.036f, 0.042f), new(0.05f, 0.032f, 0.034f), new(0.105f, 0.045f, 0.042f), new(0.12f, 0.050f, 0.048f), new(0.17f, 0.064f, 0.060f), new(0.185f, 0.064f, 0.058f), new(0.187f, 0f, 0f));

    private Loft Limb(float length, float dark, Section[] sections) => new((x, y) => LegSkin(x + length, y, false, dark + length) with { Opacity = Tint.Step(-0.10f, 0.02f, x) }, sections) { Roundness = 0.8f };

    private Skin LegSkin(float x, float y, bool white, float dark) =>
        white ? new Skin(new Vector3(0.90f, 0.88f, 0.84f) * (0.93f + 0.1f * _noise.At(50 * x, 50 * y)), 0.1f)
        : new Skin(Tint.Mix(Coat(x + 11, y), _points, Tint.Step(dark - 0.10f, dark + 0.10f, x)), 0.25f);

    private Skin TrunkSkin(float x, float y)
    {
        var colour = Coat(x, y);
        // Flank and belly a shade darker; the line of the ribs and the point of the shoulder a shade lighter.
        colour *= 1 - 0.16f * Tint.Step(-0.15f, -0.40f, y);
        return new Skin(colour, 0.4f);
    }

    private Skin HeadSkin(float x, float y)
    {
        var colour = Tint.Mix(Coat(x + 4, y), _points, 0.75f * Tint.Step(0.46f, 0.58f, x));
        if (y > 0.045f && x is > 0.06f and < 0.40f) colour = Tint.Mix(colour, new Vector3(0.92f, 0.9f, 0.87f), 0.85f * Tint.Step(0.05f, 0.065f, y + 0.02f * _noise.At(20 * x, 1)));
        if (Inside(x - 0.145f, y - 0.035f, 0.022f, 0.015f)) colour = new Vector3(0.05f, 0.04f, 0.04f);
        if (Inside(x - 0.565f, y - 0.028f, 0.020f, 0.012f)) colour = new Vector3(0.06f, 0.05f, 0.05f);
        var strap = MathF.Abs(x - 0.36f) < 0.013f || MathF.Abs(x - 0.02f - 0.3f * y) < 0.012f || (MathF.Abs(y + 0.02f - 0.06f * x) < 0.011f && x is > 0.02f and < 0.47f);
        return strap ? new Skin(new Vector3(0.10f, 0.07f, 0.055f), 0.4f) : new Skin(colour, 0.3f);
    }

    private Vector3 Coat(float x, float y)
    {
        var shade = 0.86f + 0.22f * _noise.Layers(5 * x, 7 * y, 3) + 0.10f * _noise.At(38 * x, 16 * y) + 0.06f * _noise.At(90 * x, 60 * y);
        var colour = _coat * shade;
        if (!_look.Dapples) return colour;
        var dapple = Tint.Step(0.50f, 0.85f, 0.7f * _noise.At(19 * x + 4, 21 * y - 3) + 0.3f * _noise.At(47 * x, 47 * y));
        return Tint.Mix(colour, colour * 1.14f + new Vector3(0.02f), 0.75f * dapple);
    }

    private static float NeckCrest(float x) => 0.215f - 0.12f * Math.Clamp(x / 0.8f, 0, 1);

    private static float Muscle(float x, float y, float atX, float atY, float size)
    {
        var d = ((x - atX) * (x - atX) + (y - atY) * (y - atY)) / (size * size);
        return MathF.Exp(-2 * d) * 2;
    }

    private static bool Inside(float x, float y, float a, float b) => x * x / (a * a) + y * y / (b * b) < 1;
}
