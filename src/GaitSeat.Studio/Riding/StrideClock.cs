using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Where in the strides an instant lies.</summary>
/// <param name="Stride">0-based.</param>
/// <param name="Phase">0 at the sit that begins the stride, 1 at the next.</param>
/// <param name="HorsePhase">The same for the horse's legs: half a stride off after the rider has sat two beats running.</param>
internal readonly record struct StrideMoment(int Stride, double Phase, double HorsePhase);

/// <summary>One stride of the plan.</summary>
/// <param name="HorseStrides">1, or a half where the rider sits a second beat.</param>
internal readonly record struct PlannedStride(Gait Gait, double HorseStrides);

/// <summary>
/// When each stride begins, and in which gait. The phase runs through whole numbers exactly at the sit instants, smoothly in between
/// (cubic through the instants, slope from the neighbouring strides), so timing has no kinks.
/// </summary>
internal sealed class StrideClock
{
    private const int LeadStrides = 3;
    private readonly List<double> _instants = [];
    private readonly List<PlannedStride> _strides = [];
    private readonly double[] _horse;
    private readonly double[] _slopes;

    public StrideClock(ClipScript script, SeededNoise noise)
    {
        // A halt from end to end has no strides: the phase stays 0.
        if (script.StrideHzOrUsual > 0 || script.GaitChanges.Count > 0) Plan(script, noise);
        _horse = new double[_instants.Count];
        for (var i = 1; i < _horse.Length; i++) _horse[i] = _horse[i - 1] + _strides[i - 1].HorseStrides;
        _slopes = Slopes();
    }

    public bool HasStrides => _instants.Count > 0;

    /// <summary>Sit instants, s, from before the clip to after it.</summary>
    public IReadOnlyList<double> Instants => _instants;

    /// <summary>Stride i runs from instant i to the next.</summary>
    public IReadOnlyList<PlannedStride> Strides => _strides;

    public StrideMoment At(double seconds)
    {
        if (!HasStrides) return default;
        var i = IndexAt(seconds);
        var span = _instants[i + 1] - _instants[i];
        var x = (seconds - _instants[i]) / span;
        var horse = _strides[i].HorseStrides;
        var (a, b) = (_slopes[i] * span / horse, _slopes[i + 1] * span / horse);
        var phase = x * (a + x * (3 - 2 * a - b + x * (a + b - 2)));
        return new(i, phase, horse * phase + _horse[i] % 1);
    }

    private int IndexAt(double seconds)
    {
        var at = _instants.BinarySearch(seconds);
        return Math.Clamp(at >= 0 ? at : ~at - 1, 0, _instants.Count - 2);
    }

    private void Plan(ClipScript script, SeededNoise noise)
    {
        var mean = 1 / script.StrideHzOf(script.Gait);
        // The first sit inside the clip comes 10 to 60 % of a stride after its start.
        _instants.Add((0.1 + 0.5 * noise.Uniform() - LeadStrides) * mean);
        var bounceLeft = script.DoubleBounceAtSeconds is not null;
        while (_instants[^1] < script.DurationSeconds + LeadStrides * mean)
        {
            var gait = GaitFrom(script, _instants[^1], mean);
            mean = 1 / script.StrideHzOf(gait);
            var second = bounceLeft && gait == Gait.RisingTrot && _instants[^1] > script.DoubleBounceAtSeconds - mean / 2;
            if (second) bounceLeft = false;
            var stride = new PlannedStride(gait, second ? 0.5 : 1);
            _strides.Add(stride);
            _instants.Add(_instants[^1] + stride.HorseStrides * (mean * (1 + script.DurationCvPct / 100 * Math.Clamp(noise.Normal(), -2.5, 2.5))));
        }

        _strides.Add(_strides[^1]);
    }

    // A change takes effect at the sit nearest to its time.
    private static Gait GaitFrom(ClipScript script, double seconds, double strideSeconds) =>
        script.GaitChanges.LastOrDefault(c => c.AtSeconds <= seconds + strideSeconds / 2)?.Gait ?? script.Gait;

    private double[] Slopes()
    {
        var slopes = new double[_instants.Count];
        var last = slopes.Length - 1;
        for (var i = 0; i <= last; i++)
        {
            var before = Rate(Math.Max(0, i - 1));
            var after = Rate(Math.Min(last - 1, i));
            // Harmonic mean keeps the phase monotone (Fritsch and Butland 1984, from memory).
            slopes[i] = 2 * before * after / (before + after);
        }

        return slopes;
    }

    private double Rate(int stride) => _strides[stride].HorseStrides / (_instants[stride + 1] - _instants[stride]);
}
