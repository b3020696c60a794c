using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>One cross-section of a part: how far it reaches from its axis on either side, m.</summary>
/// <param name="X">Place along the axis, m from the first joint.</param>
/// <param name="Front">Reach on the + side (front of a limb that hangs, top of a body that lies).</param>
/// <param name="Back">Reach on the other side.</param>
internal readonly record struct Section(float X, float Front, float Back);

/// <summary>What a place on a part looks like.</summary>
/// <param name="Rgb">Colour in flat light.</param>
/// <param name="Gloss">0 matt, 1 shiny.</param>
/// <param name="Opacity">0 lets the part below through, for soft joins.</param>
internal readonly record struct Skin(Vector3 Rgb, float Gloss = 0, float Opacity = 1);

/// <summary>
/// A rigid part seen from the side: an outline given by cross-sections along an axis, rounded like a limb, with colours that are fixed to it
/// (so that optical flow on it is honest). x along the axis, y towards the front, m.
/// </summary>
internal sealed class Loft
{
    private readonly Section[] _sections;

    public Loft(Func<float, float, Skin> skin, params Section[] sections)
    {
        if (sections.Length < 3) throw new ArgumentException("A part needs three sections or more.", nameof(sections));
        _sections = sections;
        Skin = skin;
        MinX = sections[0].X;
        MaxX = sections[^1].X;
        MaxFront = sections.Max(s => s.Front) + 0.01f;
        MaxBack = sections.Max(s => s.Back) + 0.01f;
    }

    public Func<float, float, Skin> Skin { get; }

    public IReadOnlyList<Section> Sections => _sections;

    /// <summary>How round: 1 as deep as wide, less is flatter.</summary>
    public float Roundness { get; init; } = 1;

    /// <summary>Small unevenness of the surface (folds, muscles), m.</summary>
    public Func<float, float, float>? Bump { get; init; }

    public float MinX { get; }

    public float MaxX { get; }

    public float MaxFront { get; }

    public float MaxBack { get; }

    /// <summary>Reach to front and back at a place along the axis; negative outside.</summary>
    public (float Front, float Back) At(float x)
    {
        if (x <= MinX || x >= MaxX) return (-1, -1);
        var i = 1;
        while (_sections[i].X < x) i++;
        var (a, b) = (_sections[i - 1], _sections[i]);
        var before = _sections[Math.Max(0, i - 2)];
        var after = _sections[Math.Min(_sections.Length - 1, i + 1)];
        return (Curve(before.X, before.Front, a.X, a.Front, b.X, b.Front, after.X, after.Front, x),
            Curve(before.X, before.Back, a.X, a.Back, b.X, b.Back, after.X, after.Back, x));
    }

    /// <summary>Height of the surface towards the viewer, m; 0 outside the outline.</summary>
    public float Height(float x, float y)
    {
        var (front, back) = At(x);
        var half = (front + back) / 2;
        if (half <= 0) return 0;
        var off = (y - (front - back) / 2) / half;
        var inside = 1 - off * off;
        return inside <= 0 ? 0 : Roundness * half * MathF.Sqrt(inside) + (Bump?.Invoke(x, y) ?? 0);
    }

    // Cubic with finite-difference slopes (Catmull-Rom on uneven knots).
    private static float Curve(float xm, float ym, float x0, float y0, float x1, float y1, float xp, float yp, float x)
    {
        var span = x1 - x0;
        var slope = (y1 - y0) / span;
        var s0 = xm < x0 ? (slope + (y0 - ym) / (x0 - xm)) / 2 : slope;
        var s1 = xp > x1 ? (slope + (yp - y1) / (xp - x1)) / 2 : slope;
        var t = (x - x0) / span;
        var (t2, t3) = (t * t, t * t * t);
        return (2 * t3 - 3 * t2 + 1) * y0 + (t3 - 2 * t2 + t) * span * s0 + (3 * t2 - 2 * t3) * y1 + (t3 - t2) * span * s1;
    }
}
