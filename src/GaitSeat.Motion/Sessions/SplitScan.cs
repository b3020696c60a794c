namespace GaitSeat.Motion.Sessions;

/// <summary>The split that speaks most for a change.</summary>
/// <param name="At">The first stride after it; 0 where no split shows thigh angle and index moving against each other.</param>
/// <param name="Strength">Squared distance of the differences from none, in units of their covariance.</param>
/// <param name="Scatter">Covariance from stride to stride, as the strides and the settings together say.</param>
/// <param name="Wander">How much larger than the settings say the wandering and steady errors are, as variance; 1 or more.</param>
internal readonly record struct Split(int At, double Strength, Spread2 Scatter, double Wander);

/// <summary>
/// Every split of one line of strides against the hypothesis of no change. The two measures are looked at together, and a split counts only
/// where they move against each other: that is what leathers do, while a turned view or a slipped hip point can move both alike.
/// </summary>
internal sealed class SplitScan
{
    private readonly StrideLine _line;
    private readonly SessionSettings _settings;
    private readonly SplitFactors _factors;
    private readonly Blocks _blocks;
    private readonly Spread2 _priorScatter;

    public SplitScan(StrideLine line, SessionSettings settings)
    {
        (_line, _settings) = (line, settings);
        _factors = SplitFactors.Of(line, settings.SlowSeconds);
        _blocks = new(line, settings.BlockStrides);
        _priorScatter = Spread2.Of(settings.ThighScatterDeg, settings.IndexScatterPctLeg, 0);
        Slow = Spread2.Of(settings.ThighSlowDeg, settings.IndexSlowPctLeg, settings.ErrorCorrelation);
        ClipSteady = Spread2.Of(settings.ThighClipDeg, settings.IndexClipPctLeg, settings.ErrorCorrelation);
    }

    public Spread2 Slow { get; }

    public Spread2 ClipSteady { get; }

    /// <param name="thigh">Thigh angle at the sit by stride, deg.</param>
    /// <param name="index">Stirrup length index by stride, percent of leg length.</param>
    public Split Strongest(double[] thigh, double[] index)
    {
        var pairs = Pairs(thigh, index);
        var means = new SideMeans(_line.Weight, thigh, index);
        var blocks = _blocks.Of(thigh, index);
        var best = new Split(0, 0, _priorScatter, 1);
        for (var k = _settings.LeastStrides; k <= _line.Count - _settings.LeastStrides; k++)
        {
            if (!_line.Pauses(k, _settings.PauseSeconds)) continue;
            var (a, b) = means.Difference(k);
            if (a * b >= 0) continue;
            var scatter = Scatter(pairs, k, thigh, index);
            var wander = Wander(blocks, means, scatter, k);
            var strength = Covariance(k, scatter, wander).Distance(a, b);
            if (strength > best.Strength) best = new(k, strength, scatter, wander);
        }

        return best;
    }

    /// <summary>How much larger than the settings say the wandering and steady errors are about a split whose place is known.</summary>
    public double WanderAt(int k, double[] thigh, double[] index) =>
        Wander(_blocks.Of(thigh, index), new(_line.Weight, thigh, index), Scatter(Pairs(thigh, index), k, thigh, index), k);

    private Spread2 Covariance(int k, Spread2 scatter, double wander) =>
        _factors.Scatter[k] * scatter + wander * (_factors.Slow[k] * Slow + _factors.ClipSteady[k] * ClipSteady);

    /// <summary>From neighbours, so that neither a change nor a wandering error swells it; the pair across the split is left out.</summary>
    private Spread2 Scatter((Spread2 Sum, int Count) pairs, int k, double[] thigh, double[] index)
    {
        var (sum, count) = pairs;
        if (_line.Touches(k)) (sum, count) = (sum - Spread2.OfPair(thigh[k] - thigh[k - 1], index[k] - index[k - 1]), count - 1);
        return 1 / (_settings.PriorWeight + count) * (_settings.PriorWeight * _priorScatter + sum);
    }

    private (Spread2 Sum, int Count) Pairs(double[] thigh, double[] index)
    {
        var (sum, count) = (default(Spread2), 0);
        for (var i = 1; i < _line.Count; i++)
        {
            if (!_line.Touches(i)) continue;
            sum += Spread2.OfPair(thigh[i] - thigh[i - 1], index[i] - index[i - 1]);
            count++;
        }

        return (sum, count);
    }

    /// <summary>Whether runs of strides lie farther from the mean of their side than the settings say; the run across the split is left out.</summary>
    private double Wander(List<Block> blocks, SideMeans means, Spread2 scatter, int k)
    {
        var (before, after) = (means.Before(k), means.After(k));
        double sum = 0;
        var count = 0;
        foreach (var block in blocks)
        {
            if (block.First < k && block.EndExcl > k) continue;
            var (a, b) = block.First < k ? before : after;
            var expected = 1.0 / block.Count * scatter + Slow + ClipSteady;
            sum += expected.Distance(block.Thigh - a, block.Index - b) / 2;
            count++;
        }

        var free = Math.Max(0, count - 2);
        return Math.Max(1, (_settings.PriorWeight + sum) / (_settings.PriorWeight + free));
    }
}
