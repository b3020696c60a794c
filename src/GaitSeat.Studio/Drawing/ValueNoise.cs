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
        var top = Lattice(ix, iy) + u * (Lattice(ix + 1, iy) - Lattice(ix, iy));
        var bottom = Lattice(ix, iy + 1) + u * (Lattice(ix + 1, iy + 1) - Lattice(ix, iy + 1));
        return top + v * (bottom - top);
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

    private float Lattice(int x, int y)
    {
        unchecked
        {
            var h = ((uint)x * 0x85EBCA6Bu) ^ ((uint)y * 0xC2B2AE35u) ^ _seed;
            h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
            h = (h ^ (h >> 12)) * 0x297A2D39u;
            return ((h ^ (h >> 15)) & 0xFFFFFF) / 16777215f;
        }
    }
}
