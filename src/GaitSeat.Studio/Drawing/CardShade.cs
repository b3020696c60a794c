using System.Numerics;
using System.Runtime.Intrinsics;

namespace GaitSeat.Studio;

/// <summary>Light on a card as it lies in the picture.</summary>
internal readonly struct CardShade
{
    /// <summary>Light from the upper left, in front: x right, y down, z to the viewer.</summary>
    private static readonly Vector3 Light = Vector3.Normalize(new Vector3(-0.45f, -0.72f, 0.62f));
    private static readonly Vector3 Halfway = Vector3.Normalize(Light + Vector3.UnitZ);

    private const float Ambient = 0.60f;
    private const float SkyShare = 0.10f;
    private const float Direct = 0.52f;
    private readonly Vector4 _x;
    private readonly Vector4 _y;
    private readonly Vector4 _z;
    private readonly float _dim;

    /// <param name="dim">1 in full light; less for the far side.</param>
    public CardShade(Placement place, float dim)
    {
        var (x, y) = (Vector2.Normalize(place.AlongX), Vector2.Normalize(place.AlongY));
        Vector3 InPart(Vector3 d) => new(x.X * d.X + x.Y * d.Y, y.X * d.X + y.Y * d.Y, d.Z);
        var (light, sky, half) = (InPart(Light), InPart(-Vector3.UnitY), InPart(Halfway));
        (_x, _y, _z) = (new(light.X, sky.X, half.X, 0), new(light.Y, sky.Y, half.Y, 0), new(light.Z, sky.Z, half.Z, 0));
        _dim = dim;
    }

    /// <param name="colour">See <see cref="Sprite.Texels"/>, as the surface.</param>
    public Vector4 Lit(Vector4 colour, Vector4 surface)
    {
        var normal = surface / colour.W;
        // How far it faces the light, the sky, and halfway from the light to the viewer.
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
