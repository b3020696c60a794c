namespace GaitSeat.Studio;

/// <summary>
/// When each stride begins. The phase runs through whole numbers exactly at the sit instants, smoothly in between
/// (cubic through the instants, slope from the neighbouring strides), so timing has no kinks.
/// </summary>
internal sealed class StrideClock
{
    private const int LeadStrides = 3;
    private readonly double[] _instants;
    private readonly double[] _slopes;

    /// <param name="strideHz">Mean strides per second; 0 for a halt: no strides, phase stays 0.</param>
    public StrideClock(double strideHz, double durationSeconds, double cvPct, SeededNoise noise)
    {
        if (strideHz <= 0)
        {
            _instants = _slopes = [];
            return;
        }

        var meanSeconds = 1 / strideHz;
        var count = (int)Math.Ceiling(durationSeconds * strideHz * 1.2) + 2 * LeadStrides + 2;
        _instants = new double[count];
        // The first sit inside the clip comes 10 to 60 % of a stride after its start.
        _instants[0] = (0.1 + 0.5 * noise.Uniform() - LeadStrides) * meanSeconds;
        for (var i = 1; i < count; i++)
            _instants[i] = _instants[i - 1] + meanSeconds * (1 + cvPct / 100 * Math.Clamp(noise.Normal(), -2.5, 2.5));
        _slopes = new double[count];
        for (var i = 0; i < count; i++)
        {
            var before = 1 / (_instants[Math.Max(1, i)] - _instants[Math.Max(0, i - 1)]);
            var after = 1 / (_instants[Math.Min(count - 1, i + 1)] - _instants[Math.Min(count - 2, i)]);
            // Harmonic mean keeps the phase monotone (Fritsch and Butland 1984, from memory).
            _slopes[i] = 2 * before * after / (before + after);
        }
    }

    public bool HasStrides => _instants.Length > 0;

    /// <summary>Sit instants, s, from before the clip to after it.</summary>
    public IReadOnlyList<double> Instants => _instants;

    /// <summary>Which stride, and how far in it (0..1).</summary>
    public (int Stride, double Phase) At(double seconds)
    {
        if (!HasStrides) return (0, 0);
        var at = Array.BinarySearch(_instants, seconds);
        var i = Math.Clamp(at >= 0 ? at : ~at - 1, 0, _instants.Length - 2);
        var span = _instants[i + 1] - _instants[i];
        var x = (seconds - _instants[i]) / span;
        var (a, b) = (_slopes[i] * span, _slopes[i + 1] * span);
        return (i, x * (a + x * (3 - 2 * a - b + x * (a + b - 2))));
    }
}
