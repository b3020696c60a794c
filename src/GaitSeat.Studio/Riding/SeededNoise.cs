namespace GaitSeat.Studio;

/// <summary>Random numbers that are the same on every machine and runtime for a seed (SplitMix64, Steele 2014, public domain).</summary>
internal sealed class SeededNoise(int seed, int stream)
{
    private const double Per53Bits = 1.0 / (1UL << 53);
    private ulong _state = unchecked((ulong)(uint)seed * 0x9E3779B97F4A7C15UL + (ulong)(uint)stream * 0xD1B54A32D192ED03UL);

    public ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15UL;
            var z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>0 inclusive to 1 exclusive.</summary>
    public double Uniform() => (Next() >> 11) * Per53Bits;

    public double Between(double low, double high) => low + (high - low) * Uniform();

    /// <summary>Mean 0, standard deviation 1 (Box and Muller).</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Uniform())) * Math.Cos(2 * Math.PI * Uniform());
}
