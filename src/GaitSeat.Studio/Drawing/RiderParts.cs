using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>
/// The rider's parts for a stature of 168 cm; other statures stretch them. Limbs hang: x from the upper joint down, + to the front.
/// The flesh lies around the joint centres as on a body (buttock 9 cm under the hip joint), it does not move them.
/// </summary>
internal sealed class RiderParts
{
    private readonly ValueNoise _noise;
    private readonly Vector3 _jacket;
    private readonly Vector3 _breeches;
    private readonly Vector3 _boots;
    private readonly Vector3 _helmet;
    private readonly Vector3 _skin;
    private readonly Vector3 _hair;
    private readonly Vector3 _gloves;
    private readonly bool _loose;

    public RiderParts(Look look, int seed)
    {
        (_noise, _loose) = (new ValueNoise(seed + 303), look.LooseJacket);
        (_jacket, _breeches, _boots) = (Tint.Parse(look.Jacket), Tint.Parse(look.Breeches), Tint.Parse(look.Boots));
        (_helmet, _skin, _hair, _gloves) = (Tint.Parse(look.Helmet), Tint.Parse(look.Skin), Tint.Parse(look.Hair), Tint.Parse(look.Gloves));
    }

    /// <summary>Shoulder joint (0) to hip joint (length), under a jacket that ends a hand over the hip joint.</summary>
    public Loft Trunk(float length) => new(
        (x, y) =>
        {
            var colour = Cloth(_jacket, x, y);
            if (x < -0.035f) colour = Cloth(_jacket * 0.7f, x, y);
            if (MathF.Abs(x - 0.57f * length) < 0.012f) colour *= 0.78f;
            if (MathF.Abs(y - 0.085f) < 0.0035f && x > 0.03f && x < 0.9f * length) colour *= 0.72f;
            return new Skin(colour, 0.05f);
        },
        _loose ? Loosened(TrunkSections(length), 0.022f, hem: length + 0.15f) : TrunkSections(length))
    { Roundness = 0.85f, Bump = Folds };

    /// <summary>Hair that hangs down the back, from the nape.</summary>
    public Loft LongHair() => new(
        (x, y) => new Skin(_hair * (0.65f + 0.7f * _noise.At(90 * y, 5 * x)), 0.35f),
        new(-0.03f, 0.02f, 0.02f), new(0f, 0.042f, 0.045f), new(0.12f, 0.05f, 0.055f), new(0.28f, 0.046f, 0.05f), new(0.37f, 0.025f, 0.03f), new(0.40f, 0f, 0f));

    private static Section[] TrunkSections(float length) =>
    [
        new(-0.075f, 0.028f, 0.050f), new(-0.06f, 0.045f, 0.058f), new(-0.02f, 0.062f, 0.078f), new(0.05f, 0.090f, 0.094f), new(0.14f, 0.122f, 0.098f), new(0.22f, 0.112f, 0.092f), new(0.30f, 0.094f, 0.082f), new(0.36f, 0.098f, 0.092f), new(length - 0.110f, 0.100f, 0.104f), new(length - 0.088f, 0.098f, 0.108f), new(length - 0.080f, 0.088f, 0.100f),
    ];

    // A wide jacket stands off the body all round and hangs over the seat.
    private static Section[] Loosened(Section[] fitted, float byM, float hem)
    {
        var loose = fitted.Select(s => s.X < 0 ? s : new Section(s.X, s.Front + byM, s.Back + byM)).ToList();
        if (hem > loose[^1].X) loose.Add(new(hem, loose[^1].Front + byM, loose[^1].Back + byM / 2));
        return [.. loose];
    }

    private Section[] Sleeve(params Section[] fitted) => _loose ? [.. fitted.Select(s => new Section(s.X, 1.3f * s.Front, 1.3f * s.Back))] : fitted;

    /// <summary>The seat in breeches around the hip joint, same axis as the trunk (x from the hip joint down).</summary>
    public Loft Pelvis() => new(
        (x, y) => new Skin(Cloth(_breeches, x + 1, y), 0.05f),
        new(-0.13f, 0.08f, 0.08f), new(-0.10f, 0.094f, 0.098f), new(-0.06f, 0.099f, 0.112f), new(0.0f, 0.100f, 0.125f), new(0.045f, 0.085f, 0.122f), new(0.075f, 0.06f, 0.095f), new(0.092f, 0.02f, 0.05f), new(0.098f, 0f, 0f))
    { Roundness = 0.8f };

    /// <summary>Hip joint to knee joint.</summary>
    public Loft Thigh(float length) => new(
        (x, y) =>
        {
            var suede = y < -0.02f && x > 0.45f * length;
            return new Skin(Cloth(_breeches * (suede ? 0.86f : 1), x, y), 0.05f, Tint.Step(-0.10f, -0.02f, x));
        },
        new(-0.105f, 0.03f, 0.03f), new(-0.08f, 0.075f, 0.07f), new(0.0f, 0.104f, 0.092f), new(0.30f * length, 0.102f, 0.080f), new(0.62f * length, 0.088f, 0.061f), new(0.88f * length, 0.066f, 0.050f), new(length, 0.063f, 0.047f), new(length + 0.035f, 0.049f, 0.036f), new(length + 0.058f, 0f, 0f))
    { Roundness = 0.9f, Bump = Folds };

    /// <summary>Knee joint to ankle joint: a tall boot up to the knee.</summary>
    public Loft Shank(float length) => new(
        (x, y) =>
        {
            if (x < -0.012f + 0.1f * MathF.Max(0, -y)) return new Skin(Cloth(_breeches * 0.95f, x + 2, y), 0.05f);
            var crease = MathF.Abs(x - 0.86f * length - 0.2f * y) < 0.008f || MathF.Abs(x - 0.93f * length + 0.2f * y) < 0.006f;
            return new Skin(_boots * (crease ? 0.6f : 0.9f + 0.2f * _noise.Layers(12 * x, 12 * y, 2)), 0.65f);
        },
        new(-0.055f, 0f, 0f), new(-0.035f, 0.042f, 0.036f), new(0.0f, 0.058f, 0.050f), new(0.06f, 0.055f, 0.058f), new(0.13f, 0.052f, 0.068f), new(0.22f, 0.047f, 0.064f), new(0.32f, 0.041f, 0.047f), new(length - 0.03f, 0.041f, 0.041f), new(length, 0.045f, 0.043f), new(length + 0.035f, 0.045f, 0.045f), new(length + 0.05f, 0.03f, 0.03f), new(length + 0.055f, 0f, 0f));

    /// <summary>Heel point (0) to toe point (length), + up; sole and heel below.</summary>
    public Loft Foot(float length) => new(
        (x, y) => y < -0.008f || (x < 0.075f && y < -0.002f) ? new Skin(new Vector3(0.11f, 0.09f, 0.08f), 0.1f) : new Skin(_boots * (0.9f + 0.2f * _noise.At(14 * x, 14 * y)), 0.65f),
        new(-0.018f, 0.01f, 0.01f), new(-0.010f, 0.045f, 0.028f), new(0.02f, 0.085f, 0.032f), new(0.065f, 0.092f, 0.031f), new(0.078f, 0.088f, 0.016f), new(0.12f, 0.066f, 0.018f), new(0.17f, 0.044f, 0.021f), new(0.9f * length, 0.032f, 0.021f), new(length, 0.020f, 0.018f), new(length + 0.012f, 0.006f, 0.006f), new(length + 0.015f, 0f, 0f))
    { Roundness = 0.8f };

    public Loft UpperArm(float length) => new(
        (x, y) => new Skin(Cloth(_jacket * 1.04f, x + 4, y), 0.05f),
        Sleeve(new(-0.062f, 0f, 0f), new(-0.045f, 0.038f, 0.042f), new(0.0f, 0.060f, 0.062f), new(0.10f, 0.054f, 0.054f), new(0.22f, 0.047f, 0.046f), new(length, 0.043f, 0.042f), new(length + 0.03f, 0.032f, 0.03f), new(length + 0.042f, 0f, 0f)))
    { Bump = Folds };

    /// <summary>Elbow to wrist, with the gloved hand beyond.</summary>
    public Loft Forearm(float length) => new(
        (x, y) => x > length - 0.012f ? new Skin(_gloves * (0.9f + 0.3f * _noise.At(40 * x, 40 * y)), 0.15f)
            : x > length - 0.03f ? new Skin(Cloth(_jacket * 0.8f, x, y), 0.05f)
            : new Skin(Cloth(_jacket * 1.04f, x + 6, y), 0.05f),
        new(-0.042f, 0f, 0f), new(-0.03f, 0.03f, 0.03f), new(0.0f, 0.043f, 0.042f), new(0.08f, 0.044f, 0.042f), new(length - 0.03f, 0.031f, 0.030f), new(length - 0.005f, 0.030f, 0.029f), new(length + 0.03f, 0.037f, 0.034f), new(length + 0.06f, 0.037f, 0.036f), new(length + 0.085f, 0.022f, 0.026f), new(length + 0.093f, 0f, 0f))
    { Bump = Folds };

    /// <summary>From the base of the skull (0) down to the collar (length).</summary>
    public Loft Neck(float length) => new(
        (x, y) => x > length - 0.045f ? new Skin(new Vector3(0.93f, 0.93f, 0.92f), 0.05f) : new Skin(_skin * (0.93f + 0.05f * _noise.At(30 * x, 30 * y))),
        new(-0.03f, 0.045f, 0.045f), new(0.02f, 0.046f, 0.050f), new(0.06f, 0.047f, 0.052f), new(length - 0.04f, 0.052f, 0.058f), new(length + 0.01f, 0.058f, 0.066f));

    /// <summary>Helmet top (0) down to the chin, + towards the face; the ear's opening lies at the height the body plan says.</summary>
    public Loft Head(float earX)
    {
        var (brow, chin) = (earX - 0.030f, earX + 0.108f);
        return new Loft(
            (x, y) => HeadSkin(x - earX, y),
            new(0.0f, 0.0f, 0.0f), new(0.006f, 0.045f, 0.045f), new(0.030f, 0.085f, 0.090f), new(0.065f, 0.108f, 0.112f), new(brow - 0.006f, 0.116f, 0.117f), new(brow, 0.112f, 0.113f), new(brow + 0.012f, 0.103f, 0.104f),
            new(earX + 0.012f, 0.106f, 0.097f), new(earX + 0.028f, 0.118f, 0.090f), new(earX + 0.040f, 0.124f, 0.080f), new(earX + 0.047f, 0.108f, 0.072f), new(earX + 0.060f, 0.109f, 0.050f), new(earX + 0.072f, 0.105f, 0.030f), new(earX + 0.088f, 0.104f, 0.012f), new(chin - 0.006f, 0.094f, -0.01f), new(chin, 0.076f, -0.04f))
        { Roundness = 0.45f };
    }

    /// <summary>The peak of the helmet: from the brow forward, + up.</summary>
    public Loft Peak() => new(
        (_, _) => new Skin(_helmet * 0.9f, 0.5f),
        new(-0.03f, 0.016f, 0.006f), new(0.0f, 0.015f, 0.006f), new(0.03f, 0.009f, 0.005f), new(0.052f, 0.003f, 0.003f), new(0.056f, 0f, 0f));

    /// <summary>Hair gathered at the nape.</summary>
    public Loft Bun() => new(
        (x, y) => new Skin(_hair * (0.7f + 0.6f * _noise.At(60 * x, 25 * y)), 0.35f),
        new(-0.036f, 0f, 0f), new(-0.026f, 0.024f, 0.024f), new(0f, 0.036f, 0.036f), new(0.026f, 0.024f, 0.024f), new(0.036f, 0f, 0f));

    // x below the ear's opening.
    private Skin HeadSkin(float x, float y)
    {
        if (x < -0.030f) return new Skin(_helmet * (MathF.Abs(x + 0.040f) < 0.006f ? 1.6f : 1) + new Vector3(0.03f) * (MathF.Abs(y) < 0.012f ? 1 : 0), 0.7f);
        var ear = y * y / (0.014f * 0.014f) + (x - 0.004f) * (x - 0.004f) / (0.024f * 0.024f);
        var strap = MathF.Abs(y - 0.016f - 0.55f * Math.Clamp(x, 0, 0.1f)) < 0.006f;
        if (strap) return new Skin(new Vector3(0.08f, 0.08f, 0.09f), 0.2f);
        if (ear < 1) return new Skin(_skin * (ear < 0.35f ? 0.72f : 0.98f));
        if (y < -0.018f - 0.30f * MathF.Max(0, x)) return new Skin(_hair * (0.75f + 0.5f * _noise.At(25 * x, 90 * y)), 0.3f);
        if (Ellipse(x - 0.010f, y - 0.083f, 0.006f, 0.010f)) return new Skin(new Vector3(0.12f, 0.09f, 0.08f));
        if (Ellipse(x + 0.010f, y - 0.082f, 0.004f, 0.018f)) return new Skin(_hair * 0.8f);
        if (x is > 0.062f and < 0.074f && y > 0.078f) return new Skin(Tint.Mix(_skin, new Vector3(0.66f, 0.30f, 0.28f), 0.6f));
        var cheek = Ellipse(x - 0.045f, y - 0.055f, 0.028f, 0.028f) ? 0.25f : 0;
        return new Skin(Tint.Mix(_skin, new Vector3(0.85f, 0.50f, 0.42f), cheek) * (0.96f + 0.05f * _noise.At(30 * x, 30 * y)), 0.05f);
    }

    private Vector3 Cloth(Vector3 colour, float x, float y) =>
        colour * (0.90f + 0.16f * _noise.Layers(8 * x, 8 * y, 3) + 0.04f * _noise.At(120 * x, 120 * y));

    private float Folds(float x, float y) => 0.005f * _noise.Layers(14 * x + 8 * y, 10 * y - 9 * x, 2);

    private static bool Ellipse(float x, float y, float a, float b) => x * x / (a * a) + y * y / (b * b) < 1;
}
