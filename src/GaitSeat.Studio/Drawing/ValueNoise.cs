using System.Runtime.Intrinsics;

namespace GaitSeat.Studio;

/// <summary>Smooth noise on a plane, 0..1, the same for a seed on every machine.</summary>
internal sealed class ValueNoise(int seed)
{
    private readonly uint _seed = unchecked((uint)seed * 0x9E3779B1u);

    /// <summary>One octave with features about one unit wide.</summary>
    public float At(float x, float y)
    {
        var (fx, fy) = (MathF.Floor(x), MathF.Floor(y));
        var (ix, iy) = ((int)fx, (int)fy);
        var (u, v) = (Smooth(x - fx), Smooth(y - fy));
        var corners = Lattice(Vector128.Create(ix, ix, ix + 1, ix + 1), Vector128.Create(iy, iy + 1, iy, iy + 1));
        var side = corners + u * (Vector128.Shuffle(corners, Vector128.Create(2, 3, 2, 3)) - corners);
        return side[0] + v * (side[1] - side[0]);
    }

    /// <summary>Octaves of halving size and weight.</summary>
    public float Layers(float x, float y, int octaves)
    {
        var (sum, weight, total) = (0f, 1f, 0f);
        for (var i = 0; i < octaves; i++)
        {
            sum += weight * At(x, y);
            total += weight;
            (x, y, weight) = (2 * x + 17.3f, 2 * y - 9.1f, weight / 2);
        }

        return sum / total;
    }

    private static float Smooth(float t) => t * t * (3 - 2 * t);

    private Vector128<float> Lattice(Vector128<int> x, Vector128<int> y)
    {
        var h = (x.AsUInt32() * 0x85EBCA6Bu) ^ (y.AsUInt32() * 0xC2B2AE35u) ^ Vector128.Create(_seed);
        h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
        h = (h ^ (h >> 12)) * 0x297A2D39u;
        return Vector128.ConvertToSingle(((h ^ (h >> 15)) & Vector128.Create(0xFFFFFFu)).AsInt32()) / 16777215f;
    }
}
